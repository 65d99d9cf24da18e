package dropline.harness.cli;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.trace.TraceSink;
import dropline.harness.finding.Finding;
import dropline.harness.finding.Findings;
import dropline.harness.finding.SegmentEvidence;
import dropline.harness.finding.Tiers;
import dropline.harness.listen.Hearer;
import dropline.harness.listen.Overheard;
import dropline.harness.measure.SegmentMeasures;
import dropline.harness.replay.Both;
import dropline.harness.replay.TraceFile;
import dropline.harness.verdict.Recording;
import dropline.harness.verdict.ReplayResult;
import dropline.harness.verdict.Run;
import dropline.harness.verdict.Verdicts;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What was heard on a segment, as a trace: what is wrong by it, and the segment's figures. */
final class Witness implements Closeable {
    private final Pit pit;
    private final Layout layout;
    private final SegmentEvidence evidence;
    private final SegmentMeasures measures;
    private final @Nullable TraceFile events;
    private final Overheard overheard;

    /**
     * @param described the pit
     * @param throughAnAdapter whether an adapter's delays are in the times, so that they say nothing of the boards
     * @param trace where every event is written; null for nowhere
     */
    Witness(Pit described, int segmentIndex, boolean throughAnAdapter, @Nullable Path trace) throws IOException {
        pit = described.alone(segmentIndex);
        layout = Layout.of(pit);
        evidence = new SegmentEvidence(pit, layout, 0, throughAnAdapter ? Tiers.HOST : Tiers.CONTROLLER);
        events = trace == null ? null : TraceFile.create(trace, pit, 0, TraceFile.OVERHEARD);
        Pit bare = bare(pit);
        measures = new SegmentMeasures(bare, Layout.of(bare), 0);
        TraceSink sink = new Both(new WireOnly(measures), evidence.sink());
        overheard = new Overheard(pit, events == null ? sink : new Both(sink, events.segment(0)));
    }

    /** What panels show cannot be heard. */
    private static Pit bare(Pit pit) {
        Segment segment = pit.segments().get(0);
        List<Node> nodes = segment.nodes().stream()
                .map(node -> node.with(node.profile(), List.of()))
                .toList();
        return pit.with(0, segment.with(nodes, segment.cable()));
    }

    /** What is to take the frames. */
    Hearer hearer() {
        return overheard;
    }

    /** Writes what has happened so far. */
    void merge() throws IOException {
        if (events != null) {
            events.merge();
        }
    }

    /** What is wrong. */
    List<Finding> findings() {
        return Findings.of(pit, layout, List.of(evidence));
    }

    /**
     * The segment's figures.
     *
     * @param name of what was heard
     * @param caveats what they rest on
     */
    ReplayResult result(String name, List<String> caveats) {
        Pit bare = bare(pit);
        Run run = new Run(
                Version.number(),
                new Recording(name, overheard.reachedNanos()),
                0,
                overheard.digest(),
                List.of(),
                findings(),
                caveats,
                true);
        return new Verdicts(bare, Layout.of(bare)).of(run, List.of(measures));
    }

    @Override
    public void close() throws IOException {
        if (events != null) {
            events.merge();
            events.close();
        }
    }
}
