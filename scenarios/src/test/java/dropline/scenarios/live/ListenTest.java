package dropline.scenarios.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.run.SegmentRun;
import dropline.harness.link.Arrival;
import dropline.harness.listen.CaptureFile;
import dropline.harness.listen.Listening;
import dropline.harness.listen.NodeTally;
import dropline.harness.listen.StateLog;
import dropline.harness.pitfile.PitFile;
import dropline.harness.recording.PitFeed;
import dropline.harness.recording.ReadOptions;
import dropline.harness.recording.RecordingFiles;
import dropline.harness.replay.Progress;
import dropline.harness.replay.Source;
import dropline.harness.replay.WatchedRun;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whoever listens to the demo's segments hears what the trace says was said. */
final class ListenTest {
    private static final long SECOND = 1_000_000_000L;
    private static final long FROM = 100 * SECOND;
    private static final long PLAYED = 10 * SECOND;

    @TempDir
    private Path folder;

    private static Pit demo() {
        if (PitFile.read(Path.of("demo/pit.yaml")) instanceof PitFile.Understood understood) {
            return understood.pit();
        }
        throw new AssertionError("the demo pit must be right");
    }

    private static Source flight(Pit pit, Path file, long from, long to) throws IOException {
        return Source.recording(RecordingFiles.of(file), pit, ReadOptions.strict(), from, to);
    }

    private static List<Pair> played(Pit pit) throws IOException {
        List<Pair> pairs =
                pit.segments().stream().map(segment -> new Pair(pit, segment)).toList();
        Path flight = Path.of("demo/flight.dlr");
        new WatchedRun(pit, () -> flight(pit, flight, FROM, FROM + PLAYED), 1, List.of(), 2)
                .run(pairs, until -> {}, Progress.NONE);
        return pairs;
    }

    @Test
    void whatIsSaidIsHeardAndCounted() throws IOException {
        Pit pit = demo();
        List<Pair> pairs = played(pit);
        List<Layout.NodePlace> places = Layout.of(pit).nodes();
        for (int s = 0; s < pairs.size(); s++) {
            Pair pair = pairs.get(s);
            Listening listening = new Listening(pit, s, List.of());

            pair.heard.forEach(listening::take);
            listening.quiet(PLAYED + SECOND);

            assertEquals(0, listening.unsound());
            assertEquals(0, listening.strayReplies());
            assertEquals(pair.broadcasts, listening.broadcasts());
            for (NodeTally tally : listening.nodes()) {
                int node = indexOf(places, tally.name());
                assertEquals(pair.asked[node], tally.asked(), tally.name());
                assertTrue(Math.abs(pair.answered[node] - tally.answered()) <= 1, tally.name());
                long bit = SECOND / pair.segment.baud();
                // a board's own clock is off by up to two parts in a hundred of its reply
                assertTrue(Math.abs(pair.gaps[node] - tally.mostGapNanos()) <= 12 * bit, tally.name());
            }
        }
    }

    private static int indexOf(List<Layout.NodePlace> places, String name) {
        return places.stream().map(place -> place.node().name()).toList().indexOf(name);
    }

    @Test
    void whatIsSentBecomesARecordingThatSaysTheSame() throws IOException {
        Pit pit = demo();
        Pair front = played(pit).get(0);
        Path file = folder.resolve("heard.long.csv");
        try (StateLog states = StateLog.create(file, pit, 0)) {
            Listening listening = new Listening(pit, 0, List.of(states));
            front.heard.forEach(listening::take);
        }

        long[] values = new long[front.values.length];
        WatchedRun.Watcher last = new WatchedRun.Watcher() {
            @Override
            public void follow(SegmentRun run) {
                // only its events matter
            }

            @Override
            public void stateChanged(long atNanos, int signal, int serial, long value) {
                values[signal] = value;
            }
        };
        WatchedRun.Watcher deaf = new WatchedRun.Watcher() {
            @Override
            public void follow(SegmentRun run) {
                // nothing of it matters
            }
        };
        new WatchedRun(pit, () -> flight(pit, file, 0, PitFeed.TO_THE_END), 1, List.of(), 2)
                .run(List.of(last, deaf, deaf), until -> {}, Progress.NONE);

        int same = 0;
        for (int signal = 0; signal < values.length; signal++) {
            same += values[signal] == front.values[signal] ? 1 : 0;
        }
        // what changed at the very end was still waiting to be sent
        assertTrue(same >= values.length - 8, same + " of " + values.length);
    }

    @Test
    void aCaptureIsHeardAsItWas() throws IOException {
        Pit pit = demo();
        Pair front = played(pit).get(0);
        Path file = folder.resolve("front.txt");
        Listening first = new Listening(pit, 0, List.of());
        try (CaptureFile capture = CaptureFile.create(file)) {
            for (Arrival.Received received : front.heard) {
                first.take(received);
                capture.add(received);
            }
        }

        Listening again = new Listening(pit, 0, List.of());
        try (CaptureFile capture = CaptureFile.open(file)) {
            capture.feed(again);
        }

        assertEquals(first.bytes(), again.bytes());
        assertEquals(first.unsound(), again.unsound());
        assertEquals(
                first.nodes().stream().map(NodeTally::answered).toList(),
                again.nodes().stream().map(NodeTally::answered).toList());
        assertTrue(Files.size(file) > 100_000);
    }
}
