package dropline.harness.profile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Indicator.Blocks;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Lines of {@code dropline_time.h} among other things that a board prints. */
final class TimedTasksTest {
    private static final long SECOND = 1_000_000_000;

    private final TimedTasks tasks = new TimedTasks();

    /** A line with its sum, as the header puts it. */
    private static String line(String words) {
        String text = "time " + words + " ";
        int sum = text.chars().sum() & 0xFF;
        return text + String.format("%02X", sum) + "\r\n";
    }

    private void print(String text) {
        for (byte one : text.getBytes(StandardCharsets.ISO_8859_1)) {
            tasks.take(one);
        }
    }

    private TimedTasks.Task only() {
        return List.copyOf(tasks.all()).get(0);
    }

    @Test
    void theLongestOfAllLinesCountsAndTheAverageOfAllGaps() {
        print("up\r\n" + line("display 1500 50 980000 loop") + "speed 12\n" + line("display 1604 51 1000000 loop"));

        assertEquals("display", only().name());
        assertEquals(Blocks.LOOP, only().blocks());
        assertEquals(1_604_000, only().longestNanos());
        assertEquals(101, only().count());
        assertEquals(20_000_000, only().everyNanos(10 * SECOND));
        assertEquals(2, tasks.lines());
    }

    @Test
    void whatStandsBeforeALineOnItsLineIsPassedOver() {
        print("x=3 " + line("leds 300 10 900000 interrupts"));

        assertEquals(Blocks.INTERRUPTS, only().blocks());
        assertEquals(0, tasks.spoilt());
    }

    @Test
    void aSpoiltLineIsLeftOutAndCounted() {
        print(line("display 1500 50 980000 loop").replace("1500", "9500"));
        print("time display 15");
        print(line("display 1400 50 980000 loop"));

        assertEquals(1_400_000, only().longestNanos(), "one that was cut short does not spoil the next");
        assertEquals(1, tasks.spoilt());
        assertEquals(1, tasks.lines());
    }

    @Test
    void whatCameOnceBetweenLinesComesAsOftenAsItWasSeen() {
        print(line("flash 3300 1 0 interrupts") + line("flash 3300 1 0 interrupts"));

        assertEquals(5 * SECOND, only().everyNanos(10 * SECOND));
    }

    @Test
    void whatTakesAllTheTimeIsStillATask() {
        print(line("busy 30000 100 990000 loop"));

        assertEquals(30_000_000, only().everyNanos(SECOND), "a task must be over before the next");
    }

    @Test
    void namesThatYamlWouldTakeOtherwiseAreQuoted() {
        print(line("it's 10 2 1000 loop"));

        assertTrue(tasks.text("a: b", "8-bit loop", "2026-11-27", SECOND).contains("  'a: b':\n"));
        assertTrue(tasks.text("a", "8-bit loop", "2026-11-27", SECOND).contains("      'it''s':\n"));
    }
}
