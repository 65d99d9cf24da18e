package dropline.harness.baseline;

import dropline.harness.verdict.ControlResult;
import dropline.harness.verdict.PanelResult;
import dropline.harness.verdict.ReplayResult;
import dropline.harness.verdict.SegmentResult;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** The figures of one run that a baseline follows. */
public final class Tracked {
    private final Map<Subject, Map<Figure, Double>> figures = new TreeMap<>();

    private Tracked() {}

    /** Takes them from a result. What was never updated, moved or answered has none. */
    public static Tracked of(ReplayResult result) {
        Tracked tracked = new Tracked();
        for (SegmentResult segment : result.segments()) {
            Subject subject = new Subject(Subject.Kind.SEGMENT, segment.segment());
            if (segment.pollCycle().count() > 0) {
                tracked.put(subject, Figure.MEAN_CYCLE, segment.pollCycle().meanNanos());
            }
            tracked.put(subject, Figure.TIMED_OUT, segment.timedOut());
            tracked.put(subject, Figure.GAVE_UP, segment.gaveUp());
            for (SegmentResult.NodeGap node : segment.nodeGaps()) {
                if (node.answered() > 0) {
                    tracked.put(new Subject(Subject.Kind.NODE, node.node()), Figure.REPLY_GAP, node.meanNanos());
                }
            }
        }
        for (PanelResult panel : result.panels()) {
            Subject subject = new Subject(Subject.Kind.PANEL, panel.panel());
            tracked.put(subject, Figure.UPDATES, panel.updateLatency().count());
            if (panel.updateLatency().count() > 0) {
                tracked.put(subject, Figure.P50, panel.updateLatency().p50Nanos());
                tracked.put(subject, Figure.P99, panel.updateLatency().p99Nanos());
            }
        }
        for (ControlResult control : result.controls()) {
            Subject subject = new Subject(Subject.Kind.CONTROL, control.control());
            tracked.put(subject, Figure.MOVES, control.moves());
            tracked.put(subject, Figure.LOST, control.lostSteps());
            if (control.controlLatency().count() > 0) {
                tracked.put(subject, Figure.TOLD_P50, control.controlLatency().p50Nanos());
                tracked.put(subject, Figure.TOLD_P99, control.controlLatency().p99Nanos());
            }
        }
        return tracked;
    }

    private void put(Subject subject, Figure figure, double value) {
        figures.computeIfAbsent(subject, none -> new EnumMap<>(Figure.class)).put(figure, value);
    }

    /** One of them; empty where the run has none. */
    public Optional<Double> figure(Subject subject, Figure figure) {
        return Optional.ofNullable(figures.getOrDefault(subject, Map.of()).get(figure));
    }

    Map<Subject, Map<Figure, Double>> figures() {
        return figures;
    }
}
