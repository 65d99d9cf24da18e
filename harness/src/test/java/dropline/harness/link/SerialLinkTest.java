package dropline.harness.link;

import static org.awaitility.Awaitility.await;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import dropline.protocol.CharacterFormat;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Over pairs of pseudo-terminals, a fresh one each, since one keeps its settings and what was not read. */
@EnabledOnOs(OS.LINUX)
final class SerialLinkTest extends LinkContract {
    private static final int BAUD = 250_000;

    @TempDir
    private Path folder;

    private final List<AutoCloseable> opened = new ArrayList<>();
    private int pairs;

    @BeforeAll
    static void socatMustBeThere() {
        boolean there = Files.isExecutable(Path.of("/usr/bin/socat"));
        assumeTrue(there || "required".equals(System.getProperty("dropline.peers")), "socat is not installed");
        assertTrue(there, "socat must be installed: -Ddropline.peers=required");
    }

    @AfterEach
    void close() throws Exception {
        for (AutoCloseable one : opened) {
            one.close();
        }
    }

    private static SerialPlan plan(Path port) {
        return new SerialPlan(port.toString(), BAUD, CharacterFormat.EIGHT_N_ONE, true);
    }

    private Path[] pair() throws IOException {
        Path[] ends = {folder.resolve("a" + pairs), folder.resolve("b" + pairs)};
        pairs++;
        Process socat = new ProcessBuilder("socat", "pty,raw,echo=0,link=" + ends[0], "pty,raw,echo=0,link=" + ends[1])
                .inheritIO()
                .start();
        opened.add(socat::destroy);
        await().atMost(10, TimeUnit.SECONDS).until(() -> Files.exists(ends[0]) && Files.exists(ends[1]));
        return ends;
    }

    @Override
    Link link() throws IOException {
        Path[] ends = pair();
        opened.add(0, new PlayedNode(SerialLink.open(plan(ends[1]))));
        return SerialLink.open(plan(ends[0]));
    }

    /** jSerialComm 2.10.4 to 2.11.2 refuse this rate on Linux. */
    @Test
    void aPortOpensAt250000Baud() throws IOException {
        Path[] ends = pair();

        SerialLink.open(plan(ends[0])).close();
    }

    @Test
    void aPortThatIsNotThereIsNamedWithThoseThatAre() {
        SerialPlan missing = new SerialPlan("/dev/ttyNONE7", BAUD, CharacterFormat.EIGHT_N_ONE, true);

        IOException refused = assertThrows(IOException.class, () -> SerialLink.open(missing));

        assertTrue(
                String.valueOf(refused.getMessage()).startsWith("there is no port /dev/ttyNONE7; "),
                refused.getMessage());
    }

    @Test
    void aPortThatIsOpenAlreadyIsInUse() throws IOException {
        Path[] ends = pair();
        opened.add(0, SerialLink.open(plan(ends[0])));

        IOException refused = assertThrows(IOException.class, () -> SerialLink.open(plan(ends[0])));

        assertTrue(String.valueOf(refused.getMessage()).contains("in use by another program"), refused.getMessage());
    }

    @Test
    @Timeout(60)
    void aPortThatVanishesIsToldOf() throws Exception {
        Path[] ends = pair();
        try (SerialLink link = SerialLink.open(plan(ends[0]))) {
            opened.get(opened.size() - 1).close();

            Arrival lost = link.await(link.now() + 20_000_000_000L);

            assertTrue(lost instanceof Arrival.Lost, String.valueOf(lost));
        }
    }
}
