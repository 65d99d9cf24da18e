package dropline.harness.verdict;

import dropline.bus.bound.Bound;
import dropline.bus.bound.Obstacle;
import dropline.bus.bound.WorstCase;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.harness.measure.ControlMeasure;
import dropline.harness.measure.PanelMeasure;
import dropline.harness.measure.SegmentMeasures;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;

/** The bounds of a pit's segments with all nodes well, in words. */
final class AtWorsts {
    private final Pit pit;
    private final Layout layout;
    private final Map<Integer, WorstCase> segments = new TreeMap<>();

    /** {@code measures}: of a run, which tell how fast states came in it. */
    AtWorsts(Pit pit, Layout layout, List<SegmentMeasures> measures) {
        this.pit = pit;
        this.layout = layout;
        for (SegmentMeasures segment : measures) {
            segments.put(
                    segment.segment(),
                    WorstCase.of(pit, segment.segment(), WorstCase.NONE, segment.leastStateGapNanos()));
        }
    }

    AtWorst panel(PanelMeasure measure) {
        int segment = layout.nodes().get(measure.node()).segment();
        Bound bound = of(segment).update(position(measure.node()), measure.panel());
        return said(segment, Objects.requireNonNull(bound));
    }

    AtWorst control(ControlMeasure measure) {
        Layout.ControlPlace place = measure.place();
        return said(place.segment(), of(place.segment()).control(position(place.node()), place.control()));
    }

    AtWorst cycle(int segment) {
        return said(segment, of(segment).cycle());
    }

    private WorstCase of(int segment) {
        return Objects.requireNonNull(segments.get(segment));
    }

    private int position(int node) {
        int first = node;
        while (first > 0
                && layout.nodes().get(first - 1).segment()
                        == layout.nodes().get(node).segment()) {
            first--;
        }
        return node - first;
    }

    private AtWorst said(int segment, Bound bound) {
        Obstacle obstacle = bound.obstacle();
        if (obstacle != null) {
            return new AtWorst(-1, List.of(), why(pit.segments().get(segment), obstacle));
        }
        return new AtWorst(
                bound.nanos(),
                bound.parts().stream()
                        .map(part -> new AtWorst.Part(Words.of(part.stage()), part.nanos()))
                        .toList(),
                "");
    }

    private static String why(Segment segment, Obstacle obstacle) {
        String node =
                obstacle.node() < 0 ? "" : segment.nodes().get(obstacle.node()).name();
        String time = Words.time(obstacle.nanos());
        String limit = Words.time(obstacle.limitNanos());
        return switch (obstacle.kind()) {
            case DEAD -> "node " + node + " is dead";
            case FLOATING_PAIR -> "nobody holds the idle pair of " + segment.name() + ", so any frame may be spoilt";
            case NO_MAXIMUM ->
                node.isEmpty()
                        ? "no maximum is stated for the wake-up of the adapter of " + segment.name()
                        : "no maximum is stated for the reply gap of node " + node;
            case LATE_REPLY ->
                obstacle.nanos() == 0
                        ? "the tasks of node " + node + " leave it no time to answer"
                        : "the reply of node " + node + " may end " + time
                                + " after its request, beyond the time-out of " + limit
                                + ", and then touches the next frame";
            case LATE_RELEASE ->
                "node " + node + " drives the pair for " + time
                        + " after its reply, but the next frame may begin after " + limit;
            case LATE_ADAPTER ->
                "the host may have the reply of node " + node + " only " + time
                        + " after its request, beyond the time-out of " + limit;
            case EARLY_REPLY ->
                "node " + node + " may reply " + time + " after its request, while the controller drives the pair for "
                        + limit;
            case CLOCK -> "the clock of node " + node + " is off by more than a UART surely bears";
            case FLOATING_RECEIVER ->
                "the receiver of node " + node + " floats while it sends, which spoils the frame after its reply";
            case FIFO_OVERRUN ->
                "node " + node + " turns interrupts off for up to " + time
                        + ", and its UART surely keeps characters for " + limit + " only";
            case RING_OVERRUN ->
                "node " + node + " blocks its loop for up to " + time + ", and its receive ring surely lasts " + limit
                        + " only";
            case ALWAYS_BLOCKED -> "the tasks of node " + node + " leave its program no time";
            case NOT_SENT -> "the protocol of " + segment.name() + " has no frame for state";
            case REPLACED ->
                obstacle.limitNanos() == 0
                        ? "a newer value may come before it has got to the last one, which takes " + time
                        : "a newer value may come every " + limit + ", before it has got to the last one, which takes "
                                + time;
        };
    }
}
