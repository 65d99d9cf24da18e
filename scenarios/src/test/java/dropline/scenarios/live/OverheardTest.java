package dropline.scenarios.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.fault.Fault;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.harness.finding.Cause;
import dropline.harness.finding.Finding;
import dropline.harness.finding.Findings;
import dropline.harness.finding.SegmentEvidence;
import dropline.harness.finding.Tiers;
import dropline.harness.listen.Listening;
import dropline.harness.listen.Overheard;
import dropline.harness.pitfile.PitFile;
import dropline.harness.recording.ReadOptions;
import dropline.harness.recording.RecordingFiles;
import dropline.harness.replay.Both;
import dropline.harness.replay.Progress;
import dropline.harness.replay.Source;
import dropline.harness.replay.WatchedRun;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What is heard on the demo's front segment becomes a trace that says what the run's own trace says. */
final class OverheardTest {
    private static final long SECOND = 1_000_000_000L;
    private static final long FROM = 100 * SECOND;
    private static final long PLAYED = 10 * SECOND;
    private static final int DEAF = 4;

    private final Pit pit = demo();
    private final Pit front = pit.alone(0);

    private static Pit demo() {
        if (PitFile.read(Path.of("demo/pit.yaml")) instanceof PitFile.Understood understood) {
            return understood.pit();
        }
        throw new AssertionError("the demo pit must be right");
    }

    private Pair played(List<Fault> faults) throws IOException {
        List<Pair> pairs =
                pit.segments().stream().map(segment -> new Pair(pit, segment)).toList();
        RecordingFiles flight = RecordingFiles.of(Path.of("demo/flight.dlr"));
        new WatchedRun(
                        pit,
                        () -> Source.recording(flight, pit, ReadOptions.strict(), FROM, FROM + PLAYED),
                        1,
                        faults,
                        2)
                .run(pairs, until -> {}, Progress.NONE);
        return pairs.get(0);
    }

    /** Counts what the trace made of what was heard says. */
    private Pair overhear(Pair said, SegmentEvidence evidence) {
        Pair told = new Pair(front, front.segments().get(0));
        Overheard overheard = new Overheard(front, new Both(told, evidence.sink()));
        Listening listening = new Listening(front, 0, List.of(overheard));
        said.heard.forEach(listening::take);
        listening.quiet(PLAYED + SECOND);
        listening.end();
        return told;
    }

    private SegmentEvidence evidence() {
        return new SegmentEvidence(front, Layout.of(front), 0, Tiers.CONTROLLER);
    }

    private static void assertAlike(Pair said, Pair told) {
        for (int node = 0; node < told.asked.length; node++) {
            assertEquals(said.asked[node], told.asked[node]);
            assertTrue(Math.abs(said.answered[node] - told.answered[node]) <= 1);
            assertTrue(Math.abs(said.timedOut[node] - told.timedOut[node]) <= 1);
        }
        assertEquals(said.broadcasts, told.broadcasts);
        assertEquals(said.carried, told.carried);
    }

    @Test
    void aSoundSegmentHasNoFindings() throws IOException {
        Pair said = played(List.of());
        SegmentEvidence evidence = evidence();

        Pair told = overhear(said, evidence);

        assertAlike(said, told);
        assertEquals(said.cycles, told.cycles);
        assertEquals(List.of(), Findings.of(front, Layout.of(front), List.of(evidence)));
    }

    @Test
    void aDeadBoardIsNamed() throws IOException {
        Pair said = played(List.of(Fault.deadNode(0, DEAF)));
        SegmentEvidence evidence = evidence();

        Pair told = overhear(said, evidence);

        assertAlike(said, told);
        assertTrue(said.gaveUp > 0);
        assertEquals(said.gaveUp, told.gaveUp);
        List<Finding> findings = Findings.of(front, Layout.of(front), List.of(evidence));
        assertEquals(1, findings.size());
        assertEquals(
                front.segments().get(0).nodes().get(DEAF).name(),
                findings.get(0).name());
        assertTrue(findings.get(0).causes().contains(Cause.DEAD_NODE));
    }
}
