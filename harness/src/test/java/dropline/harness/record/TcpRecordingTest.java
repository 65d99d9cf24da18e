package dropline.harness.record;

import static org.awaitility.Awaitility.await;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.harness.stream.StreamReader;
import java.io.Closeable;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

final class TcpRecordingTest {

    @Test
    void linesAreReadATornOneIsNotAndALostConnectionIsMadeAnew() throws Exception {
        try (ServerSocket server = new ServerSocket(0, 5, InetAddress.getLoopbackAddress())) {
            Arrivals arrivals = new Arrivals(Arrivals.USUAL_BYTES, System::nanoTime);
            Listener listener = new Listener();
            try (Recorder recorder = recorder(server, arrivals, listener, 60_000)) {
                Running running = new Running(recorder);
                say(server, "a=1,b=2\r\na=3,b=4\na=5,b=600");
                say(server, "a=7\n" + "x".repeat(Lines.LONGEST + 10) + "\na=8\n");
                await().until(() -> recorder.tally().received() == 6);
                running.stopped();

                Tally tally = recorder.tally();
                assertEquals(4, tally.states());
                assertEquals(2, tally.malformed());
                assertTrue(tally.outages() >= 1);
                assertEquals(
                        List.of(
                                "the connection ended within a line",
                                "a line is longer than " + Lines.LONGEST + " bytes"),
                        tally.malformedExamples());
                String said = String.join("\n", listener.said);
                assertTrue(said.contains("was lost; connecting anew") && said.contains(", after "), said);
            }
        }
    }

    @Test
    void aServerThatStaysAwayHasEndedTheStream() throws Exception {
        Arrivals arrivals = new Arrivals(Arrivals.USUAL_BYTES, System::nanoTime);
        try (ServerSocket server = new ServerSocket(0, 5, InetAddress.getLoopbackAddress());
                Recorder recorder = recorder(server, arrivals, new Listener(), 100)) {
            Running running = new Running(recorder);
            say(server, "a=1\n");
            goAway(server);

            assertEquals(Ending.STREAM_ENDED, running.ended());
            assertEquals(1, recorder.tally().states());
        }
    }

    @Test
    void aServerThatIsNotThereYetIsWaitedFor() throws Exception {
        int free;
        try (ServerSocket socket = new ServerSocket(0, 5, InetAddress.getLoopbackAddress())) {
            free = socket.getLocalPort();
        }
        Arrivals arrivals = new Arrivals(Arrivals.USUAL_BYTES, System::nanoTime);
        Listener listener = new Listener();
        InetSocketAddress address = new InetSocketAddress(InetAddress.getLoopbackAddress(), free);
        try (Recorder recorder = recorder(address, arrivals, listener, 100)) {
            Running running = new Running(recorder);
            await().until(() -> listener.said.stream().anyMatch(s -> s.contains("nobody answers")));
            try (ServerSocket server = new ServerSocket(free, 5, InetAddress.getLoopbackAddress())) {
                say(server, "a=1\n");
                await().until(() -> recorder.tally().received() == 1);
            }
            running.stopped();
            assertEquals(1, recorder.tally().states());
        }
    }

    private static Recorder recorder(ServerSocket server, Arrivals arrivals, Listener listener, long patienceMillis) {
        return recorder((InetSocketAddress) server.getLocalSocketAddress(), arrivals, listener, patienceMillis);
    }

    private static Recorder recorder(
            InetSocketAddress address, Arrivals arrivals, Listener listener, long patienceMillis) {
        TcpIntake intake = TcpIntake.open(address, arrivals, patienceMillis);
        return new Recorder(intake, arrivals, StreamReader.guessing(), null, listener, System::nanoTime);
    }

    private static void goAway(Closeable server) throws IOException {
        server.close();
    }

    /** Waits for a connection, says the text and ends the connection. */
    private static void say(ServerSocket server, String text) throws IOException {
        server.setSoTimeout(20_000);
        try (Socket connection = server.accept()) {
            connection.getOutputStream().write(text.getBytes(StandardCharsets.UTF_8));
        }
    }
}
