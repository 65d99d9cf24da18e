package dropline.scenarios.firmware;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.harness.bench.BenchResult;
import dropline.harness.bench.Item;
import java.io.IOException;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class LampBoardsTest {
    private static final int BAUD = 250_000;

    @ParameterizedTest
    @ValueSource(strings = {"lamps.hex", "lamps.elf"})
    void theBoardThatIsRightPasses(String name) throws IOException {
        BenchResult result = Programs.examined(name, BAUD);

        assertEquals(new TreeSet<>(), Programs.failed(result));
        assertTrue(result.items().size() > 20, () -> "items=" + result.items().size());
    }

    /** Each mistake with an item that must fail, and one that must not: the finding is not just that all is bad. */
    @ParameterizedTest
    @CsvSource({
        "released-on-empty, driver-edges, program",
        "released-too-soon, driver-edges, program",
        "released-too-late, lets-go, program",
        "never-released, driver-edges, program",
        "never-enabled, driver-edges, program",
        "enabled-too-late, driver-edges, program",
        "loop-blocks, back-to-back, no-overrun",
        "leds-block, interrupts-off, driver-edges",
        "small-ring, answers, no-overrun",
        "address-lost, comes-back, answers",
        "stack-too-deep, program, answers",
        "watchdog-bites, stays-up, answers",
        "interrupt-stays, soak, answers",
        "waits-for-display, soak, answers",
        "babbles, silent-to-others, answers",
        "deaf-after-reply, lets-go, driver-edges",
        "prints-in-interrupt, no-overrun, program",
        "half-clock, rate, program",
        "answers-broadcasts, silent-to-all, answers",
        "answers-others, silent-to-others, answers",
        "ignores-check, silent-to-damage, answers",
        "check-swapped, answers, rate",
        "stumbles, silent-to-noise, answers"
    })
    void everyMistakeFailsInTheItemThatNamesIt(String mistake, String fails, String passes) throws IOException {
        BenchResult result = Programs.examined("lamps-" + mistake + ".hex", BAUD);

        TreeSet<String> failed = Programs.failed(result);
        assertTrue(failed.contains(fails), () -> mistake + " fails in " + failed);
        assertTrue(!failed.contains(passes), () -> mistake + " fails in " + failed);
    }

    @Test
    void aRateThatIsOffFailsAgainstTheTrueOne() throws IOException {
        assertTrue(Programs.failed(Programs.examined("lamps-rate-off.hex", 115_200))
                .contains("off-rate"));
    }

    @Test
    void whereItWentWrongIsNamedByItsFunction() throws IOException {
        BenchResult result = Programs.examined("lamps.elf", BAUD);

        assertTrue(item(result, "interrupts-off").says().contains("__vector_"), item(result, "interrupts-off")::says);
        assertTrue(item(result, "program").says().contains("dropline_work"), item(result, "program")::says);
    }

    @Test
    void aDriverLetGoByTheTransmitCompleteInterruptIsSeenToAMicrosecond() throws IOException {
        String says = item(Programs.examined("lamps.hex", BAUD), "driver-edges").says();

        // interrupt response 4, vector jump 3, then the ISR's own instructions up to CBI: some tens of cycles of 62.5
        // ns
        assertTrue(says.matches(".*off 1\\.\\d us to .* after the last stop bit"), says);
    }

    private static Item item(BenchResult result, String name) {
        List<Item> found =
                result.items().stream().filter(item -> item.name().equals(name)).toList();
        return found.get(0);
    }
}
