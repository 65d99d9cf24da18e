package dropline.scenarios.firmware;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.harness.bench.BenchResult;
import java.io.IOException;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** Boards that speak Modbus RTU, and lines of text that a layout describes. */
final class OtherProtocolsTest {
    @Test
    void theBoardThatSpeaksLinesPasses() throws IOException {
        BenchResult result = Programs.examined("lines.hex", Programs.lines());

        assertEquals(new TreeSet<>(), Programs.failed(result));
        assertTrue(result.items().size() > 18, () -> "items=" + result.items().size());
    }

    @Test
    void theModbusBoardThatIsRightPasses() throws IOException {
        BenchResult result = Programs.examined("registers.hex", Programs.registers());

        assertEquals(new TreeSet<>(), Programs.failed(result));
        assertTrue(result.items().size() > 18, () -> "items=" + result.items().size());
    }

    @Test
    void aBoardThatTakesTooShortASilenceForTheEndAnswersTooSoon() throws IOException {
        TreeSet<String> failed =
                Programs.failed(Programs.examined("registers-short-silence.hex", Programs.registers()));

        assertTrue(failed.contains("not-too-soon"), failed::toString);
        assertTrue(!failed.contains("answers"), failed::toString);
    }
}
