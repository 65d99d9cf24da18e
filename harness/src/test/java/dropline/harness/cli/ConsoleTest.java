package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.Map;
import org.junit.jupiter.api.Test;

final class ConsoleTest {
    private long now;

    @Test
    void colourNeedsATerminalAndRespectsNoColor() {
        assertTrue(Console.mayUseColour(Map.of(), true));
        assertTrue(Console.mayUseColour(Map.of("NO_COLOR", ""), true)); // no-color.org: only when not empty
        assertFalse(Console.mayUseColour(Map.of("NO_COLOR", "1"), true));
        assertFalse(Console.mayUseColour(Map.of(), false));
    }

    @Test
    void aVerdictIsPaintedButItsWordStays() {
        assertEquals("FAIL. x\n", Colours.painted("FAIL. x\n", false));
        assertEquals("\u001B[1;31mFAIL\u001B[0m. x\n", Colours.painted("FAIL. x\n", true));
    }

    @Test
    void theBarIsShownAtMostTenTimesASecond() {
        StringWriter err = new StringWriter();
        ProgressBar bar = new ProgressBar(new PrintWriter(err), () -> now);

        for (int millis = 0; millis < 1000; millis++) {
            now = millis * 1_000_000L;
            bar.reached(millis * 1_000_000_000L, millis / 1000.0);
        }

        assertEquals(9, err.toString().chars().filter(letter -> letter == '\r').count());
        assertTrue(err.toString().contains("times as fast as life"));
    }
}
