package dropline.harness.link;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.protocol.CharacterFormat;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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
        PtyPair.mustBePossible();
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

    private PtyPair pair() throws IOException {
        PtyPair pair = new PtyPair(folder, "pair" + pairs++);
        opened.add(pair);
        return pair;
    }

    @Override
    Link link() throws IOException {
        PtyPair ends = pair();
        opened.add(0, new PlayedNode(SerialLink.open(plan(ends.far()))));
        return SerialLink.open(plan(ends.near()));
    }

    /** jSerialComm 2.10.4 to 2.11.2 refuse this rate on Linux. */
    @Test
    void aPortOpensAt250000Baud() throws IOException {
        PtyPair ends = pair();

        SerialLink.open(plan(ends.near())).close();
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
        PtyPair ends = pair();
        opened.add(0, SerialLink.open(plan(ends.near())));

        IOException refused = assertThrows(IOException.class, () -> SerialLink.open(plan(ends.near())));

        assertTrue(String.valueOf(refused.getMessage()).contains("in use by another program"), refused.getMessage());
    }

    @Test
    @Timeout(60)
    void aPortThatVanishesIsToldOf() throws Exception {
        PtyPair ends = pair();
        try (SerialLink link = SerialLink.open(plan(ends.near()))) {
            opened.get(opened.size() - 1).close();

            Arrival lost = link.await(link.now() + 20_000_000_000L);

            assertTrue(lost instanceof Arrival.Lost, String.valueOf(lost));
        }
    }
}
