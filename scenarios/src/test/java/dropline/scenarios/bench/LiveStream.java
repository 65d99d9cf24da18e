package dropline.scenarios.bench;

import java.io.IOException;
import java.io.PrintStream;
import java.net.DatagramPacket;
import java.net.DatagramSocket;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/**
 * A stream much faster than any simulator's, sent to a recorder in a Java of its own: 5,000 datagrams a second of 150
 * signals, as text, on the loopback interface. Two signals in three change with every datagram.
 */
final class LiveStream {
    private static final int RATE = 5_000;
    private static final int SECONDS = 20;
    private static final int SIGNALS = 150;
    private static final int DIFFERENT = 1_000;
    private static final long MILLI = 1_000_000L;

    private LiveStream() {}

    static void measure(Path folder, Path home, PrintStream out) throws IOException, InterruptedException {
        List<byte[]> states = states();
        int port = freePort();
        Path output = folder.resolve("record.txt");
        Process recorder = new ProcessBuilder(command(folder, home, port))
                .redirectErrorStream(true)
                .redirectOutput(output.toFile())
                .start();
        while (!Files.readString(output).contains("Waiting for what comes")) {
            if (!recorder.isAlive()) {
                throw new IllegalStateException("the recorder must start: " + Files.readString(output));
            }
            LockSupport.parkNanos(20 * MILLI);
        }
        long start = System.nanoTime();
        int sent = send(states, port);
        double seconds = (System.nanoTime() - start) / 1e9;
        Duration busy = recorder.info().totalCpuDuration().orElse(Duration.ZERO);
        // An orderly end, as with Ctrl-C; on Windows it is none, and the recording stays in its journal.
        recorder.destroy();
        if (!recorder.waitFor(3, TimeUnit.MINUTES)) {
            throw new IllegalStateException("the recorder must end when it is asked to");
        }
        out.printf(
                Locale.ROOT,
                "live stream: %,d datagrams of %d signals sent in %.1f s; the recorder's processors were busy %.1f s%n",
                sent,
                SIGNALS,
                seconds,
                busy.toMillis() / 1e3);
        for (String line : Files.readAllLines(output)) {
            out.println("  " + line);
        }
        out.printf(
                Locale.ROOT,
                "  the recording takes %.1f MiB%n",
                Files.size(folder.resolve("live.dlr")) / (double) (1 << 20));
    }

    private static List<String> command(Path folder, Path home, int port) {
        return List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "@" + home.resolve("java.options"),
                "-Xmx512m",
                "-XX:ActiveProcessorCount=2",
                "-Ddropline.home=" + home,
                "-cp",
                home.resolve("harness/target/app/lib") + "/*",
                "dropline.harness.cli.Main",
                "record",
                "--udp",
                "127.0.0.1:" + port,
                "-o",
                folder.resolve("live.dlr").toString());
    }

    private static int freePort() throws IOException {
        try (DatagramSocket socket = new DatagramSocket(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0))) {
            return socket.getLocalPort();
        }
    }

    /** Sends at an even rate; tells how many datagrams. */
    private static int send(List<byte[]> states, int port) throws IOException {
        InetAddress here = InetAddress.getLoopbackAddress();
        byte[] bytes = new byte[65_536];
        int sent = 0;
        try (DatagramSocket socket = new DatagramSocket()) {
            long start = System.nanoTime();
            while (sent < RATE * SECONDS) {
                long due = (System.nanoTime() - start) * RATE / 1_000_000_000L;
                for (; sent < Math.min(due, RATE * SECONDS); sent++) {
                    byte[] head = ("seq=" + sent).getBytes(StandardCharsets.UTF_8);
                    byte[] state = states.get(sent % DIFFERENT);
                    System.arraycopy(head, 0, bytes, 0, head.length);
                    System.arraycopy(state, 0, bytes, head.length, state.length);
                    socket.send(new DatagramPacket(bytes, head.length + state.length, here, port));
                }
                LockSupport.parkNanos(MILLI / 4);
            }
        }
        return sent;
    }

    private static List<byte[]> states() {
        List<byte[]> states = new ArrayList<>();
        for (int i = 0; i < DIFFERENT; i++) {
            StringBuilder text = new StringBuilder();
            for (int signal = 0; signal < SIGNALS; signal++) {
                double value = signal % 3 == 0 ? signal : signal + i % 500 * 0.013;
                text.append(String.format(Locale.ROOT, ";signal_%d=%.3f", signal, value));
            }
            states.add(text.toString().getBytes(StandardCharsets.UTF_8));
        }
        return states;
    }
}
