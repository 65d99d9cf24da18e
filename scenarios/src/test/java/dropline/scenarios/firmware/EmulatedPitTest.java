package dropline.scenarios.firmware;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Pit;
import dropline.bus.run.StoppedProgramException;
import dropline.harness.pitfile.PitFile;
import java.io.IOException;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Emulated boards on a segment beside modelled ones. */
final class EmulatedPitTest {
    private static final long SECOND = 1_000_000_000;

    private static String segment(String protocol, String nodes, String panels) {
        return """
                pit: Boards that run their own programs
                host: {state-rate: as recorded}
                hubs:
                  one: {kind: board, adapter: none}
                budgets: {update: 150 ms, control: 150 ms, source: a test}
                signals:
                  l0: {unit: on/off, range: 0..1, number: 0}
                  l1: {unit: on/off, range: 0..1, number: 1}
                segments:
                  s:
                    %s
                    bias: yes
                nodes:
                %s
                panels:
                %s
                """.formatted(protocol, nodes, panels);
    }

    private static String frames(String nodes, String panels) {
        return segment("""
                baud: 250000 baud
                    protocol: dropline
                    controller: {hub: one, time-out: 10 ms, gap: 200 us}""", nodes, panels);
    }

    private static String board(String image, int address) {
        return """
                  board%d:
                    segment: s
                    address: %d
                    profile: 8-bit loop
                    firmware:
                      image: %s
                      chip: atmega328p
                      driver-enable: PD2
                      pins: {l0: PB0, l1: PB1, switch %d: PC0}
                """.formatted(address, address, image, address);
    }

    /** The same without what its program does not know. */
    private static String without(String text) {
        return text.replaceAll(", switch .: PC0", "").replaceAll("(?m)^    controls:\\n.*\\n", "");
    }

    private static String panel(int address) {
        return """
                  panel %d:
                    node: board%d
                    indicators:
                      l0: {kind: lamp, shows: l0}
                      l1: {kind: lamp, shows: l1}
                    controls:
                      switch %d: {kind: toggle, number: 0, debounce: 0 ms}
                """.formatted(address, address, address);
    }

    private static final String MODELLED = "  other: {segment: s, address: 20, profile: 8-bit interrupt}\n";
    private static final String OTHERS_PANEL = """
              others:
                node: other
                indicators:
                  l0: {kind: lamp, shows: l0}
            """;

    private static Pit alone(String image) {
        return Played.pit(frames(without(board(image, 7)) + MODELLED, without(panel(7)) + OTHERS_PANEL));
    }

    private static Pit three() {
        return Played.pit(frames(
                board("lamps-at-7.hex", 7) + board("lamps-at-8.hex", 8) + MODELLED + board("lamps-at-9.hex", 9),
                panel(7) + panel(8) + OTHERS_PANEL + panel(9)));
    }

    private static Pit shipped() {
        PitFile.Result read = PitFile.read(Programs.FOLDER.resolve("pit.yaml"));
        if (read instanceof PitFile.Understood understood) {
            return understood.pit();
        }
        throw new AssertionError(read);
    }

    @Test
    void everyLampFollowsAndEverySwitchIsTold() {
        Played played = Played.played(three(), 4 * SECOND, 10 * Played.MILLI);

        assertEquals(7 * 40, played.shown.size(), "seven lamps, forty changes");
        assertTrue(played.longestNanos() < 12 * Played.MILLI, () -> "longest=" + played.longestNanos());
        assertEquals(played.moved, played.told);
        assertEquals(0, played.timedOut);
        assertEquals(4, played.answered.size());
        // forty changes, and everything once more every other second: what boards have acknowledged is not sent again
        assertTrue(played.broadcasts < 60, () -> "broadcasts=" + played.broadcasts);
    }

    /** A lamp's pin turns when the loop takes the value: within a frame's length and a loop of some 20 us. */
    @Test
    void aLampIsLitSoonAfterItsFrame() {
        Played played = Played.played(alone("lamps-at-7.hex"), 2 * SECOND, 10 * Played.MILLI);
        long soonest = played.shown.stream()
                .filter(one -> one.slot() < 2)
                .mapToLong(Played.Shown::afterNanos)
                .min()
                .orElseThrow();

        // a broadcast of two values has 13 characters of 40 us, known half a bit before its end
        assertTrue(soonest > 12.9 * 40_000 && soonest < 15 * 40_000, () -> "soonest=" + soonest);
    }

    @Test
    void theTraceHangsNeitherOnStretchesNorOnTheKindOfFile() {
        Played whole = Played.played(three(), SECOND, SECOND);

        assertEquals(whole.digest, Played.played(three(), SECOND, SECOND).digest);
        assertEquals(whole.digest, Played.played(three(), SECOND, 7 * Played.MILLI + 1).digest);
        assertEquals(whole.digest, Played.played(three(), SECOND, 333_333).digest);
        assertEquals(
                Played.played(alone("lamps.hex"), SECOND, SECOND).digest,
                Played.played(alone("lamps.elf"), SECOND, 3 * Played.MILLI).digest);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "dead-node board8 at 500ms for 500ms",
                "swapped-pair board8 at 500ms for 500ms",
                "reset board8 at 500ms by 300ms",
                "brown-out s at 500ms by 300ms",
                "stuck-driver board8 at 500ms for 300ms",
                "babbling-node board8 at 500ms for 500ms",
                "noise-burst s at 500ms by 300ms",
                "missing-bias s at 500ms for 500ms",
                "duplicate-address other as board8 at 500ms for 500ms"
            })
    void whatGoesWrongGoesByAgain(String fault) {
        Played played = Played.played(three(), 5 * SECOND / 2, 10 * Played.MILLI, fault);
        long late = played.shown.stream()
                .filter(one -> one.atNanos() > 2_000 * Played.MILLI)
                .mapToLong(Played.Shown::afterNanos)
                .max()
                .orElseThrow();

        assertTrue(played.timedOut > 0 || played.clashes > 0, () -> "nothing went wrong: " + fault);
        assertTrue(late < 12 * Played.MILLI, () -> fault + " late=" + late);
        assertEquals(played.moved, played.told);
    }

    /** A program that answers whoever is asked touches every answer of its neighbours'. */
    @Test
    void whoAnswersForOthersClashes() {
        Pit pit = Played.pit(frames(
                board("lamps-at-7.hex", 7) + without(board("lamps-answers-others-at-8.hex", 8)),
                panel(7) + without(panel(8))));
        Played played = Played.played(pit, 2 * SECOND, 10 * Played.MILLI);

        assertTrue(played.clashes > 3, () -> "clashes=" + played.clashes);
        assertTrue(played.answered.getOrDefault(0, 0) < 3, () -> "answered=" + played.answered);
    }

    @ParameterizedTest
    @CsvSource({
        "lamps-released-too-soon.hex, 0",
        "lamps-never-released.hex, 1",
        "lamps-never-enabled.hex, 0",
        "lamps-rate-off.hex, 0",
        "lamps-loop-blocks.hex, 900",
    })
    void aProgramsMistakeShowsInThePit(String image, int mostAnswers) {
        Pit pit = Played.pit(frames(without(board(image, 7)) + MODELLED, without(panel(7)) + OTHERS_PANEL));
        Played played = Played.played(pit, 2 * SECOND, 10 * Played.MILLI);

        assertTrue(played.timedOut > 5, () -> "timedOut=" + played.timedOut);
        assertTrue(played.answered.getOrDefault(0, 0) <= mostAnswers, played.answered::toString);
        assertEquals(mostAnswers > 0, played.answered.containsKey(0), played.answered::toString);
    }

    @Test
    void boardsSpeakModbusToo() {
        String protocol = """
                baud: 19200 baud
                    format: 8E1
                    protocol: modbus-rtu
                    controller: {hub: one, state: addressed, time-out: 50 ms, gap: 4 ms}""";
        String nodes = without(board("registers.hex", 7)).replace(", l1: PB1", "") + MODELLED;
        String panels = """
                  panel 7:
                    node: board7
                    indicators:
                      l0: {kind: lamp, shows: l0}
                """ + OTHERS_PANEL;
        Pit pit = Played.pit(segment(protocol, nodes, panels));
        Played played = Played.played(pit, 4 * SECOND, 10 * Played.MILLI);

        assertEquals(0, played.timedOut);
        assertTrue(played.shown.stream().filter(one -> one.slot() == 0).count() > 35, played.shown::toString);
    }

    /** The pit that is shipped for a look: both programs are fit to wire, and their panels follow. */
    @Test
    void theShippedPitFollowsItsLoad() {
        Played played = Played.played(shipped(), 4 * SECOND, 10 * Played.MILLI);

        assertEquals(0, played.timedOut);
        assertTrue(played.shown.size() > 5 * 38, () -> "shown=" + played.shown.size());
        assertTrue(played.longestNanos() < 15 * Played.MILLI, () -> "longest=" + played.longestNanos());
        assertEquals(played.moved, played.told);
    }

    @ParameterizedTest
    @ValueSource(strings = {"lamps", "fuel panel"})
    void itsProgramsAreFitToWire(String name) throws IOException {
        assertEquals(new TreeSet<>(), Programs.failed(Programs.examined(shipped(), name)));
    }

    @Test
    void whatIsNotModelledStopsTheRun() {
        Pit pit = Played.pit(frames(board("lamps-at-7.hex", 7) + MODELLED, panel(7) + OTHERS_PANEL)
                .replace("chip: atmega328p", "chip: atmega32u4"));

        StoppedProgramException stopped =
                assertThrows(StoppedProgramException.class, () -> Played.played(pit, SECOND, 10 * Played.MILLI));

        assertTrue(
                String.valueOf(stopped.getMessage()).startsWith("the program of board7 (lamps-at-7.hex) stopped at "),
                stopped::toString);
    }
}
