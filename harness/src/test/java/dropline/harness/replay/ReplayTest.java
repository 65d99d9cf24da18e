package dropline.harness.replay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.chance.Distribution;
import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.pit.Adapter;
import dropline.bus.pit.Budget;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Hub;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Signal;
import dropline.bus.pit.Transceiver;
import dropline.harness.measure.SegmentMeasures;
import dropline.harness.verdict.DeadNode;
import dropline.protocol.CharacterFormat;
import dropline.protocol.frames.DroplineFrames;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class ReplayTest {
    private static final long SECOND = 1_000_000_000L;
    private static final long MILLI = 1_000_000L;
    private static final Pit.Load LOAD = new Pit.Load(40 * MILLI, 3);

    @TempDir
    private Path folder;

    @Test
    void resultsDoNotDependOnTheNumberOfThreads() throws IOException {
        Replayed alone = replay(1).run(true, null, Progress.NONE);
        Replayed together = replay(4).run(true, null, Progress.NONE);

        assertEquals(alone.digest(), together.digest());
        assertEquals(7 * SECOND, together.durationNanos());
        for (int i = 0; i < alone.failures().size(); i++) {
            assertEquals(
                    alone.failures().get(i).measures().get(0).bus().cycles().meanNanos(),
                    together.failures().get(i).measures().get(0).bus().cycles().meanNanos());
        }
    }

    @Test
    void segmentsOfOneBoardRunAlikeWhateverTheNumberOfThreads() throws IOException {
        Pit shared = onOneBoard(pit());

        Replayed alone = replay(shared, 1).run(true, null, Progress.NONE);
        Replayed together = replay(shared, 4).run(true, null, Progress.NONE);

        assertEquals(alone.digest(), together.digest());
        assertNotEquals(replay(1).run(false, null, Progress.NONE).digest(), alone.digest(), "the board costs time");
    }

    @Test
    void traceOfABoardIsTheSameWhateverTheNumberOfThreads() throws IOException {
        Pit shared = onOneBoard(pit());
        Path one = folder.resolve("one.trace");
        Path four = folder.resolve("four.trace");

        replay(shared, 1).run(false, one, Progress.NONE);
        replay(shared, 4).run(false, four, Progress.NONE);

        assertEquals(-1, Files.mismatch(one, four));
    }

    @Test
    void deadNodeIsMeasuredOnAllSegmentsOfItsBoard() throws IOException {
        Replayed shared = replay(onOneBoard(pit()), 2).run(true, null, Progress.NONE);

        for (DeadNode dead : shared.failures()) {
            assertEquals(
                    List.of(0, 1),
                    dead.measures().stream().map(SegmentMeasures::segment).toList());
        }
    }

    @Test
    void roundOnASharedBoardTakesATurnForEveryPollOfBothSegments() throws IOException {
        long alone = meanCycleNanos(replay(1).run(false, null, Progress.NONE));
        long shared = meanCycleNanos(replay(onOneBoard(pit()), 1).run(false, null, Progress.NONE));

        // three polls on each segment, in turn, half a millisecond each
        assertTrue(alone < 3 * MILLI, () -> "alone " + alone);
        assertTrue(shared >= 3 * MILLI, () -> "shared " + shared);
    }

    private static long meanCycleNanos(Replayed replayed) {
        return replayed.segments().get(1).bus().cycles().meanNanos();
    }

    @Test
    void everyNodeDiesOnce() throws IOException {
        Replayed replayed = replay(2).run(true, null, Progress.NONE);

        assertEquals(
                List.of(0, 1, 2, 3, 4, 5),
                replayed.failures().stream().map(dead -> dead.node()).toList());
    }

    @Test
    void aTraceIsSortedByTimeThenSegmentAndEndsOnEverySegment() throws IOException {
        Path trace = folder.resolve("trace.txt");

        replay(2).run(false, trace, Progress.NONE);

        long time = 0;
        int segment = 0;
        int ended = 0;
        int events = 0;
        for (String line : Files.readAllLines(trace)) {
            if (line.startsWith("#")) {
                continue;
            }
            String[] parts = line.split(" ", -1);
            long at = Long.parseLong(parts[0]);
            int on = Integer.parseInt(parts[1]);
            assertTrue(at > time || (at == time && on >= segment), line);
            time = at;
            segment = on;
            events++;
            ended += parts[2].equals("ended") ? 1 : 0;
        }
        assertEquals(2, ended);
        assertTrue(events > 1000, "events=" + events);
    }

    @Test
    void aTracedRunHasTheDigestOfAnUntracedOne() throws IOException {
        Replayed traced = replay(2).run(false, folder.resolve("trace.txt"), Progress.NONE);

        assertEquals(replay(2).run(false, null, Progress.NONE).digest(), traced.digest());
    }

    @Test
    void progressRisesToTheEnd() throws IOException {
        List<Double> shares = new ArrayList<>();

        replay(2).run(true, null, (reached, share) -> shares.add(share));

        assertEquals(shares.stream().sorted().toList(), shares);
        assertEquals(1.0, shares.get(shares.size() - 1));
    }

    @Test
    void aFaultStrikesItsOwnSegmentAlone() throws IOException {
        Replayed healthy = replay(2).run(false, null, Progress.NONE);
        Replayed faulty = faulty(Fault.deadNode(1, 4)).run(false, null, Progress.NONE);

        assertEquals(
                healthy.segments().get(0).bus().answered(),
                faulty.segments().get(0).bus().answered());
        assertEquals(0, healthy.segments().get(1).bus().gaveUp());
        assertTrue(faulty.segments().get(1).bus().gaveUp() > 0);
    }

    @Test
    void aSourceWithoutEndIsStoppedAtTheTimeLimit() {
        Pit pit = pit();
        RunLimit limit = new RunLimit(20 * SECOND);
        Replay endless = new Replay(pit, () -> Source.load(pit, LOAD, Long.MAX_VALUE - 1), 3, 2, List.of(), limit);

        StoppedRunException stopped =
                assertThrows(StoppedRunException.class, () -> endless.run(false, null, Progress.NONE));

        assertTrue(String.valueOf(stopped.getMessage()).contains("time limit, 20 s"), stopped::toString);
    }

    @Test
    void aRunThatDoesMoreInASecondThanAPairCouldCarryIsStopped() {
        Fault storm = new Fault(FaultKind.NOISE_BURST, 0, -1, -1, -1, 0, Fault.TO_THE_END, 1e9, 1);

        StoppedRunException stopped =
                assertThrows(StoppedRunException.class, () -> faulty(storm).run(false, null, Progress.NONE));

        String message = String.valueOf(stopped.getMessage());
        assertTrue(message.contains("steps in a simulated second") && message.contains("lower their rate"), message);
    }

    @Test
    void aLoadKnowsItsLength() throws IOException {
        Pit pit = pit();
        try (Source source = Source.load(pit, LOAD, 7 * SECOND)) {
            assertEquals(OptionalLong.of(7 * SECOND), source.mostNanos());
        }
    }

    private static Replay faulty(Fault fault) {
        Pit pit = pit();
        return new Replay(pit, () -> Source.load(pit, LOAD, 7 * SECOND), 3, 2, List.of(fault), RunLimit.USUAL);
    }

    @Test
    void namesInATraceStayOnTheirLine() {
        assertEquals("\"a\\\"b\\\\c d\"", TraceFile.quoted("a\"b\\c\nd"));
    }

    private static Replay replay(int threads) {
        return replay(pit(), threads);
    }

    /** Both segments on a board whose program needs half a millisecond for each frame. */
    private static Pit onOneBoard(Pit pit) {
        List<Hub> hubs = List.of(new Hub("board", Hub.Kind.BOARD, MILLI / 2, List.of(0, 1)));
        return new Pit(pit.name(), pit.statePeriodNanos(), pit.load(), pit.signals(), pit.segments(), hubs);
    }

    private static Replay replay(Pit pit, int threads) {
        return new Replay(pit, () -> Source.load(pit, LOAD, 7 * SECOND), 3, threads);
    }

    private static Pit pit() {
        List<Signal> signals = new ArrayList<>();
        List<Segment> segments = new ArrayList<>();
        for (int s = 0; s < 2; s++) {
            List<Node> nodes = new ArrayList<>();
            for (int n = 1; n <= 3; n++) {
                String name = "lamp " + s + n;
                Indicator lamp = new Indicator(
                        "lamp", Indicator.Kind.LAMP, List.of(signals.size()), 0, 0, 0, Indicator.Blocks.NOTHING, 0);
                signals.add(new Signal(name, "on/off", 0, 1, 1, false, name, 1, 0, signals.size() + 1));
                Panel panel = new Panel(
                        "panel " + s + n,
                        "",
                        Panel.Status.BUILT,
                        List.of(lamp),
                        List.of(),
                        new Budget(100 * MILLI, 100 * MILLI, "chosen for this test"));
                nodes.add(new Node("node " + s + n, n, 1, profile(), List.of(panel), List.of()));
            }
            segments.add(new Segment(
                    "segment " + s,
                    500_000,
                    CharacterFormat.EIGHT_N_ONE,
                    DroplineFrames.create(),
                    controller(),
                    nodes,
                    true));
        }
        return new Pit("two segments", 0, LOAD, signals, segments);
    }

    private static Profile profile() {
        Distribution gap = Distribution.exponential(100_000, 50_000, 400_000);
        return new Profile(Profile.ReplyFrom.INTERRUPT, gap, 0, 0, 0, 2, 63, List.of(), 0, 0, 0, Transceiver.USUAL);
    }

    private static Controller controller() {
        return new Controller(
                Controller.Kind.HUB,
                Adapter.NONE,
                Controller.StateDelivery.BROADCAST,
                2 * MILLI,
                1,
                3,
                SECOND,
                50_000,
                0,
                0,
                0,
                0);
    }
}
