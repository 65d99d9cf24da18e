package dropline.scenarios.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.run.SegmentRun;
import dropline.bus.trace.TraceSink;
import dropline.harness.link.KeepingLink;
import dropline.harness.link.KeptLink;
import dropline.harness.link.Link;
import dropline.harness.link.LoopLink;
import dropline.harness.link.TcpLink;
import dropline.harness.live.Acknowledgements;
import dropline.harness.live.Driving;
import dropline.harness.live.RollCall;
import dropline.harness.live.StandIn;
import dropline.harness.measure.Times;
import dropline.harness.pitfile.PitFile;
import dropline.harness.recording.Moves;
import dropline.harness.recording.ReadOptions;
import dropline.harness.recording.RecordingFiles;
import dropline.harness.replay.Progress;
import dropline.harness.replay.Source;
import dropline.harness.replay.WatchedRun;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Driving the modelled nodes of a segment over a link comes to what a replay of it comes to. */
final class DriveTest {
    @TempDir
    private Path folder;

    private static final long SECOND = 1_000_000_000L;
    private static final long PLAYED = 20 * SECOND;
    private static final long SHORT = 5 * SECOND;

    /** In real time a machine that does something else meanwhile may send by so much later. */
    private static final long LATE = SECOND;

    /** The demo's pit without what adapters, drivers and hubs add: a program that polls sees none of them. */
    private static Pit bareDemo() {
        if (!(PitFile.read(Path.of("demo/pit.yaml")) instanceof PitFile.Understood understood)) {
            throw new AssertionError("the demo pit must be right");
        }
        List<Segment> segments = new ArrayList<>();
        for (Segment segment : understood.pit().segments()) {
            segments.add(segment.with(segment.controller().bare()));
        }
        return understood.pit().with(segments, List.of());
    }

    private static Source flight(Pit pit) throws IOException {
        return flight(pit, PLAYED);
    }

    private static Source flight(Pit pit, long nanos) throws IOException {
        return Source.recording(
                RecordingFiles.of(Path.of("demo/flight.dlr")),
                pit,
                ReadOptions.strict(),
                60 * SECOND,
                60 * SECOND + nanos);
    }

    /** What a segment's controller did. */
    private static final class Counts implements WatchedRun.Watcher {
        private final long[] changes;
        private final long[] values;
        private final long[] changed;
        private final int[] told;
        private long answered;
        private long timedOut;
        private long gaveUp;

        Counts(Pit pit) {
            changes = new long[pit.signals().size()];
            values = new long[pit.signals().size()];
            changed = new long[pit.signals().size()];
            told = new int[Layout.of(pit).controls().size()];
        }

        @Override
        public void follow(SegmentRun run) {
            // its events say all
        }

        @Override
        public void stateChanged(long atNanos, int signal, int serial, long value) {
            changes[signal]++;
            values[signal] = value;
            changed[signal] = atNanos;
        }

        @Override
        public void told(long atNanos, int control, int serial) {
            told[control] = serial;
        }

        @Override
        public void answered(long atNanos, int node, int transaction, int attempt, long gapNanos) {
            answered++;
        }

        @Override
        public void timedOut(long atNanos, int node, int transaction, int attempt) {
            timedOut++;
        }

        @Override
        public void gaveUp(long atNanos, int node, int transaction) {
            gaveUp++;
        }
    }

    @Test
    void drivingModelledNodesCountsWhatAReplayCounts() throws IOException {
        Pit pit = bareDemo();
        List<Counts> replayed = new ArrayList<>();
        pit.segments().forEach(segment -> replayed.add(new Counts(pit)));
        new WatchedRun(pit, () -> flight(pit), 1, List.of(), 2).run(replayed, until -> {}, Progress.NONE);
        int tried = 0;
        for (int segment = 0; segment < pit.segments().size(); segment++) {
            if (!pit.segments().get(segment).protocol().knowsBytes()) {
                continue;
            }

            Counts driven = new Counts(pit);
            Driving driving;
            LoopLink link;
            try (Source moves = flight(pit);
                    Source source = flight(pit)) {
                link = new LoopLink(pit, segment, 1, List.of(), new Moves(moves.feed()));
                driving = new Driving(pit, segment, 1, driven, link);
                driving.drive(source, () -> false, Progress.NONE);
            }

            Counts expected = replayed.get(segment);
            assertEquals(0, driven.gaveUp + driven.timedOut + driving.strangers());
            mustBeAcknowledged(pit, segment, driving, driven);
            assertEquals(0, expected.gaveUp + expected.timedOut);
            // a link hands on what it has a nanosecond late, and so does whoever drives
            assertTrue(
                    Math.abs(driven.answered - expected.answered) <= expected.answered / 200,
                    driven.answered + " answers, " + expected.answered + " in the replay");
            for (int signal = 0; signal < pit.signals().size(); signal++) {
                assertEquals(expected.changes[signal], driven.changes[signal]);
                if (driven.changes[signal] > 0) {
                    assertEquals(
                            driven.values[signal],
                            link.value(signal),
                            pit.signals().get(signal).name());
                }
            }
            for (int control = 0; control < driven.told.length; control++) {
                assertEquals(expected.told[control], driven.told[control]);
            }
            tried++;
        }
        assertTrue(tried >= 2, "segments tried: " + tried);
    }

    /** Each board acknowledges changes of what it shows, and none before it was on its way. */
    private static void mustBeAcknowledged(Pit pit, int segment, Driving driving, Counts driven) {
        Acknowledgements acknowledged = driving.acknowledgements();
        assertEquals(pit.segments().get(segment).protocol().acknowledgesState(), acknowledged != null);
        if (acknowledged == null) {
            return;
        }
        Layout layout = Layout.of(pit);
        for (int node = 0; node < layout.nodes().size(); node++) {
            int shown = node;
            Times times = acknowledged.times().get(node);
            long changes = layout.slots().stream()
                    .filter(slot -> slot.node() == shown && slot.segment() == segment)
                    .mapToInt(Layout.Slot::signal)
                    .distinct()
                    .mapToLong(signal -> driven.changes[signal])
                    .sum();
            assertTrue(times.count() <= changes, "node " + node);
            assertTrue(changes < 2 || times.count() > 0, "node " + node);
            // a state frame and a reply take longer than that at any baud rate here
            assertTrue(times.count() == 0 || times.minNanos() > 100_000, "node " + node);
        }
    }

    /** Over a real connection, in real time: what the recording determines comes out as in the replay. */
    @Test
    @Timeout(60)
    void drivingPlayedNodesOverTheNetworkSendsAndHearsWhatAReplayDoes() throws Exception {
        Pit pit = bareDemo();
        int segment = pit.segments().size() - 1;
        List<Counts> replayed = new ArrayList<>();
        pit.segments().forEach(each -> replayed.add(new Counts(pit)));
        new WatchedRun(pit, () -> flight(pit, SHORT), 1, List.of(), 2).run(replayed, until -> {}, Progress.NONE);
        InetSocketAddress here = freePort();
        AtomicBoolean stop = new AtomicBoolean();
        Counts driven = new Counts(pit);

        try (Source moves = flight(pit, SHORT);
                Source source = flight(pit, SHORT);
                TcpLink far = TcpLink.at(here);
                TcpLink near = TcpLink.to(here)) {
            StandIn nodes = new StandIn(pit, segment, 1, List.of(), new Moves(moves.feed()), new TraceSink() {}, far);
            Thread playing = new Thread(() -> play(nodes, stop), "nodes");
            playing.start();
            assertTrue(new RollCall(pit, segment, near, SECOND).firstAnswer(20 * SECOND, near) >= 0);
            Path kept = folder.resolve("timings.txt");
            Driving driving;
            try (Link keeping = KeepingLink.of(near, kept)) {
                driving = new Driving(pit, segment, 1, driven, keeping);
                driving.drive(source, () -> false, Progress.NONE);
            }
            mustBeTheSameAgain(pit, segment, driving.digest(), driven, kept);
            stop.set(true);
            playing.join();

            Counts expected = replayed.get(segment);
            assertEquals(0, driven.gaveUp);
            for (int signal = 0; signal < pit.signals().size(); signal++) {
                assertEquals(expected.changes[signal], driven.changes[signal]);
                if (driven.changes[signal] > 0 && driven.changed[signal] < SHORT - LATE) {
                    assertEquals(
                            driven.values[signal],
                            nodes.value(signal),
                            pit.signals().get(signal).name());
                }
            }
            for (int control = 0; control < driven.told.length; control++) {
                assertEquals(expected.told[control], driven.told[control]);
            }
        }
    }

    /** Fed with the host's own timings, every event comes out as it was, and so does every count. */
    private static void mustBeTheSameAgain(Pit pit, int segment, long digest, Counts driven, Path kept)
            throws IOException {
        Counts again = new Counts(pit);
        try (Source source = flight(pit, SHORT);
                KeptLink link = KeptLink.open(kept)) {
            Driving driving = new Driving(pit, segment, 1, again, link);
            driving.drive(source, link::isOver, Progress.NONE);
            assertEquals(digest, driving.digest());
        }
        assertEquals(driven.answered, again.answered);
        assertEquals(driven.timedOut, again.timedOut);
        assertEquals(driven.gaveUp, again.gaveUp);
    }

    private static void play(StandIn nodes, AtomicBoolean stop) {
        try {
            nodes.play(stop::get);
        } catch (IOException gone) {
            throw new AssertionError(gone);
        }
    }

    private static InetSocketAddress freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return new InetSocketAddress(InetAddress.getLoopbackAddress(), socket.getLocalPort());
        }
    }

    @Test
    void theSameAnswersAtTheSameInstantsGiveTheSameTrace() throws IOException {
        Pit pit = bareDemo();

        long first = digest(pit);

        assertEquals(first, digest(pit));
    }

    private static long digest(Pit pit) throws IOException {
        try (Source moves = flight(pit);
                Source source = flight(pit)) {
            LoopLink link = new LoopLink(pit, 0, 1, List.of(), new Moves(moves.feed()));
            Driving driving = new Driving(pit, 0, 1, new TraceSink() {}, link);
            driving.drive(source, () -> false, Progress.NONE);
            return driving.digest();
        }
    }
}
