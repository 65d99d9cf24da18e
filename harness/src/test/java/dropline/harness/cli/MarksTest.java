package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class MarksTest {
    private static final String TYPED = "m\nthe next answer\n";

    private final InputStream before = System.in;

    @TempDir
    private Path folder;

    @AfterEach
    void giveTheInputBack() {
        System.setIn(before);
    }

    @Test
    void eachTypedMIsOneMark() {
        Marks marks = new Marks();

        marks.read(new StringReader("m\n M \nsomething else\n\nm"));

        assertEquals(3, marks.count());
    }

    /** Nobody marks anything without a guard: what is typed is for whoever asks next. */
    @Test
    void onlyAGuardReadsWhatIsTyped() throws IOException {
        InputStream typed = typed();
        listen();
        assertEquals(TYPED.length(), typed.available());

        InputStream marks = typed();
        listen("--guard", folder.toString());
        Awaitility.await().atMost(10, TimeUnit.SECONDS).until(() -> marks.available() == 0);
    }

    private static InputStream typed() {
        InputStream typed = new ByteArrayInputStream(TYPED.getBytes(StandardCharsets.US_ASCII));
        System.setIn(typed);
        return typed;
    }

    /** To a silent bus, at a terminal. */
    private static void listen(String... more) throws IOException {
        try (ServerSocket bus = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            Stream<String> command = Stream.of(
                    "listen",
                    "--protocol=dropline",
                    "--baud=115200",
                    "--tcp=127.0.0.1:" + bus.getLocalPort(),
                    "--for=100ms");
            Captured run =
                    Captured.run(true, Stream.concat(command, Stream.of(more)).toArray(String[]::new));
            assertTrue(run.err().contains("Listening on"), run::err);
        }
    }
}
