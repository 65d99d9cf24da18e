package dropline.scenarios.record;

import static org.awaitility.Awaitility.await;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dropline.bus.pit.Pit;
import dropline.harness.pitfile.PitFile;
import dropline.harness.record.Plan;
import dropline.harness.record.Recorder;
import dropline.harness.record.Tally;
import dropline.harness.record.Watcher;
import dropline.harness.recording.PitFeed;
import dropline.harness.recording.ReadOptions;
import dropline.harness.recording.RecordingBlock;
import dropline.harness.recording.RecordingFiles;
import dropline.harness.recording.RecordingReader;
import dropline.harness.recording.RecordingWriter;
import dropline.harness.replay.Progress;
import dropline.harness.replay.Replay;
import dropline.harness.replay.Source;
import java.io.IOException;
import java.net.DatagramPacket;
import java.net.DatagramSocket;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The demo flight, sent as a simulator might send it, caught, and replayed: the same run as from the file. */
final class LiveFlightTest {
    private static final Path FLIGHT = Path.of("demo/flight.dlr");
    private static final int STATES = 300;

    @TempDir
    @SuppressWarnings("NullAway.Init")
    private Path folder;

    @Test
    void aFlightCaughtLiveReplaysAsTheFlightItself() throws Exception {
        Path caught = folder.resolve("caught.dlr");
        List<String> messages = FlightStream.of(FLIGHT, STATES);
        Plan plan = new Plan(false, new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), null, null, caught);

        try (Recorder recorder = Recorder.open(plan, new Unheard())) {
            CompletableFuture<Void> running = CompletableFuture.runAsync(() -> run(recorder));
            send(messages, recorder.port());
            await().until(() -> recorder.tally().received() == STATES);
            recorder.stop();
            running.get(60, TimeUnit.SECONDS);
            assertEquals(STATES, recorder.tally().states());
        }

        Path original = folder.resolve("original.dlr");
        copyStates(original);
        assertEquals(digest(original), digest(caught));
    }

    private static void run(Recorder recorder) {
        try {
            recorder.run(TimeUnit.MINUTES.toNanos(5));
        } catch (InterruptedException e) {
            throw new AssertionError(e);
        }
    }

    private static void send(List<String> messages, int port) throws IOException {
        try (DatagramSocket socket = new DatagramSocket()) {
            for (String message : messages) {
                byte[] bytes = message.getBytes(StandardCharsets.UTF_8);
                socket.send(new DatagramPacket(bytes, bytes.length, InetAddress.getLoopbackAddress(), port));
            }
        }
    }

    /** The same states without the control moves, which no state stream carries. */
    private static void copyStates(Path target) throws IOException {
        RecordingBlock block = new RecordingBlock();
        try (RecordingReader reader = RecordingReader.open(FLIGHT, ReadOptions.strict());
                RecordingWriter writer = RecordingWriter.create(target, reader.columns(), List.of())) {
            double[] values = new double[reader.columns().size()];
            int copied = 0;
            while (copied < STATES && reader.read(block)) {
                for (int row = 0; row < block.rows() && copied < STATES; row++, copied++) {
                    for (int column = 0; column < values.length; column++) {
                        values[column] = block.value(row, column);
                    }
                    writer.row(block.rowNanos(row), values);
                }
            }
            writer.finish();
        }
    }

    private static long digest(Path recording) throws IOException {
        PitFile.Result read = PitFile.read(Path.of("demo/pit.yaml"));
        if (!(read instanceof PitFile.Understood understood)) {
            throw new AssertionError(read);
        }
        Pit pit = understood.pit();
        RecordingFiles files = RecordingFiles.of(recording);
        Source.Opening opening = () -> Source.recording(files, pit, ReadOptions.strict(), 0, PitFeed.TO_THE_END);
        return new Replay(pit, opening, 1, 2).run(false, null, Progress.NONE).digest();
    }

    /** Nobody listens. */
    private static final class Unheard implements Watcher {
        @Override
        public void arrived(String message) {}

        @Override
        public void said(String sentence) {}

        @Override
        public void second(Tally tally) {}
    }
}
