package dropline.harness.diff;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.trace.TraceSink;
import java.io.IOException;
import java.lang.reflect.Method;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class TraceDiffTest {
    private static final String HEAD = """
            # dropline trace 1
            # pit "Small pit"
            # seed 1
            # segment 0 "front"
            # segment 1 "over \\"head\\""
            # node 0 0 "oil gauge"
            # node 1 1 "radio"
            # signal 0 "oil pressure" 0.5
            # slot 0 0 0 "Oil" "needle"
            # control 0 1 "knob"
            """;

    @TempDir
    private Path folder;

    @Test
    void tracesWithTheSameEventsAreTheSame() throws IOException {
        TraceDiff diff = diff("100 0 driver-on -1\n200 0 driver-off -1\n", "100 0 driver-on -1\n200 0 driver-off -1\n");

        assertTrue(diff.same());
        assertEquals(2, diff.events());
    }

    @Test
    void theSameInstantWithOtherNumbersIsToldFromBothSides() throws IOException {
        TraceDiff diff = diff("100 0 driver-on -1\n", "100 0 driver-on 0\n");

        assertEquals(
                List.of(
                        "They differ at 0.000000100 s on segment front:",
                        "  a.trace: the driver of the controller is enabled (line 11)",
                        "  b.trace: the driver of oil gauge is enabled (line 11)"),
                shortened(diff));
    }

    @Test
    void anEventThatOnlyOneHasIsTheDivergence() throws IOException {
        TraceDiff diff = diff(
                "50 0 state-sent\n100 1 timed-out 1 7 2\n300 0 state-sent\n", "50 0 state-sent\n300 0 state-sent\n");

        assertEquals(1, diff.events());
        assertEquals(
                List.of(
                        "They differ at 0.000000100 s on segment over \"head\":",
                        "  a.trace: radio has not answered in time (transaction 7), attempt 2 (line 12)",
                        "  b.trace: nothing then; its next event is at 0.000000300 s on segment front:"
                                + " the host sends its state (line 12)"),
                shortened(diff));
    }

    @Test
    void aTraceThatEndsEarlyIsSaidToEnd() throws IOException {
        TraceDiff diff = diff("50 0 state-sent\n", "50 0 state-sent\n60 0 shown 0 3\n");

        assertEquals(
                List.of(
                        "They differ at 0.000000060 s on segment front:",
                        "  a.trace: ends here",
                        "  b.trace: needle of Oil shows its value (change 3) (line 12)"),
                shortened(diff));
    }

    @Test
    void anEventOfALaterVersionIsToldAsItStands() throws IOException {
        TraceDiff diff = diff("50 0 state-sent\n", "50 0 something-new 1 2\n");

        assertTrue(diff.divergence().get(2).endsWith("b.trace: something-new 1 2 (line 11)"));
    }

    @Test
    void anotherPitIsRefused() throws IOException {
        Path first = Files.writeString(folder.resolve("a.trace"), HEAD);
        Path second = Files.writeString(folder.resolve("b.trace"), HEAD.replace("radio", "lamp"));

        TraceException refused = assertThrows(TraceException.class, () -> TraceDiff.of(first, second));

        assertTrue(String.valueOf(refused.getMessage()).contains("not of the same pit"), refused::getMessage);
        assertTrue(String.valueOf(refused.getMessage()).contains("# node 1 1 \"radio\""), refused::getMessage);
    }

    @Test
    void anotherSeedIsNoOtherPit() throws IOException {
        Path first = Files.writeString(folder.resolve("a.trace"), HEAD);
        Path second = Files.writeString(folder.resolve("b.trace"), HEAD.replace("seed 1", "seed 2"));

        assertTrue(TraceDiff.of(first, second).same());
    }

    @Test
    void aLineThatIsNoEventIsRefusedWithItsNumber() {
        for (String wrong : List.of("hello", "12 0", "x 0 shown 1 2", "12 y shown 1 2", "12 0 shown 1 z", "12 0  1")) {
            TraceException refused = assertThrows(
                    TraceException.class, () -> diff("50 0 state-sent\n" + wrong + "\n", "50 0 state-sent\n"));
            assertTrue(String.valueOf(refused.getMessage()).contains("a.trace:12: this is no event"), wrong);
        }
    }

    @Test
    void bytesThatAreNoTextAreRefused() throws IOException {
        Path first = Files.write(folder.resolve("a.trace"), new byte[] {(byte) 0xFF, (byte) 0xFE, 0, 1});
        Path second = Files.writeString(folder.resolve("b.trace"), HEAD);

        assertThrows(TraceException.class, () -> TraceDiff.of(first, second));
    }

    @Test
    void everyKindOfEventHasWords() {
        TraceHead head = new TraceHead();
        for (Method event : TraceSink.class.getDeclaredMethods()) {
            if (event.isDefault()) {
                String name = event.getName().replaceAll("([A-Z])", "-$1").toLowerCase(Locale.ROOT);
                TraceLine line = new TraceLine("", 0, 0, name, "1 1 1 1 1 1");
                assertFalse(new EventWords(head).of(line).startsWith(name + " "), name);
            }
        }
    }

    private TraceDiff diff(String first, String second) throws IOException {
        return TraceDiff.of(
                Files.writeString(folder.resolve("a.trace"), HEAD + first),
                Files.writeString(folder.resolve("b.trace"), HEAD + second));
    }

    private List<String> shortened(TraceDiff diff) {
        return diff.divergence().stream()
                .map(line -> line.replace(folder + java.io.File.separator, ""))
                .toList();
    }
}
