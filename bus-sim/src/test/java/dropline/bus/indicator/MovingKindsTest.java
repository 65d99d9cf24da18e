package dropline.bus.indicator;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.Pits;
import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Indicator.Glow;
import dropline.bus.pit.Indicator.Kind;
import dropline.bus.pit.Motion;
import dropline.bus.pit.Motion.Zeroing;
import dropline.bus.pit.Signal;
import dropline.bus.trace.TraceLines;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What moves, gains speed and finds its zero; signals run from 0 to 1000 in steps of 1 unless said otherwise. */
final class MovingKindsTest {
    private static final long SECOND = 1_000_000_000L;
    private static final Fault RESET =
            new Fault(FaultKind.RESET, 0, 0, -1, -1, SECOND, Fault.TO_THE_END, 0, SECOND / 10);

    private final TraceLines lines = new TraceLines();

    @Test
    void gaugeSweepsItsWholeDialOf315DegreesAt600DegreesASecondIn525Milliseconds() {
        // An X27-class gauge stepper: 315 degrees from stop to stop; some run at 600 degrees a second (documentation
        // of the NodeMCU firmware, module switec). One of its microsteps is a twelfth of a degree (from memory).
        Signal dial = new Signal("dial", "deg", 0, 315, 1 / 12.0, false, "dial", 1, 0, 0);
        Motion motion = new Motion(600, 0, 1 / 12.0, Zeroing.NONE, 0);
        OneSlot slot = new OneSlot(lines, moving(Kind.GAUGE_STEPPER, motion), dial);

        slot.apply(1, dial.quantise(315), SECOND);
        slot.until(Long.MAX_VALUE);

        assertEquals(List.of("1000000000 moved 0 0 1525000000 3780"), lines.only("moved"));
    }

    @Test
    void drumCounterRollsAtItsSpeedAndIsShownAtItsFirstMotion() {
        OneSlot slot = new OneSlot(lines, moving(Kind.DRUM_COUNTER, Motion.atOnce(50)), Pits.signal(0, false));

        slot.apply(1, 100, 0);
        slot.until(Long.MAX_VALUE);

        assertEquals(
                List.of("0 applied 0 1 0", "0 moved 0 0 2000000000 100", "0 shown 0 1"),
                lines.lines().stream().sorted().toList());
    }

    @Test
    void stepperGainsSpeedInPiecesThatJoinAndIsShownAtTheFirst() {
        OneSlot slot = new OneSlot(lines, stepper(Zeroing.NONE), Pits.signal(0, false));

        slot.apply(1, 500, 0);
        slot.until(Long.MAX_VALUE);

        List<String> moved = lines.only("moved");
        assertEquals(9, moved.size(), "four pieces to gain speed, one at full speed, four to lose it");
        assertEquals("0 moved 0 0 125000000 3", moved.get(0));
        assertEquals(List.of("0 shown 0 1"), lines.only("shown"));
        for (int i = 1; i < moved.size(); i++) {
            String[] before = moved.get(i - 1).split(" ");
            String[] now = moved.get(i).split(" ");
            assertEquals(before[4], now[0], "begins when the one before ends");
            assertEquals(before[5], now[3], "and where");
        }
        assertEquals("500", moved.get(8).split(" ")[5]);
        assertEquals(3 * SECOND, Long.parseLong(moved.get(8).split(" ")[4]), "d/v + v/a = 500/200 + 200/400");
    }

    @Test
    void stepperSentBackBrakesFirstAndIsShownWhenItTurnsRound() {
        OneSlot slot = new OneSlot(lines, stepper(Zeroing.NONE), Pits.signal(0, false));

        slot.apply(1, 500, 0);
        slot.apply(2, 0, SECOND);
        slot.until(Long.MAX_VALUE);

        assertEquals(List.of("0 shown 0 1", "1500000000 shown 0 2"), lines.only("shown"));
    }

    @Test
    void valueReplacedBeforeTheStepperTurnedTowardsItWasNeverShown() {
        OneSlot slot = new OneSlot(lines, stepper(Zeroing.NONE), Pits.signal(0, false));

        slot.apply(1, 500, 0);
        slot.apply(2, 0, SECOND);
        slot.apply(3, 400, SECOND + SECOND / 10);
        slot.until(Long.MAX_VALUE);

        assertEquals(List.of("0 shown 0 1", "1100000000 shown 0 3"), lines.only("shown"));
        String[] last = lines.only("moved").get(lines.only("moved").size() - 1).split(" ");
        assertEquals("400", last[5]);
    }

    @Test
    void endlessStepperTakesTheShortWayRound() {
        OneSlot slot = new OneSlot(lines, stepper(Zeroing.SENSOR), Pits.signal(0, true));

        slot.apply(1, 900, 0);
        slot.until(Long.MAX_VALUE);

        String[] last = lines.only("moved").get(lines.only("moved").size() - 1).split(" ");
        assertEquals("-100", last[5]);
    }

    @Test
    void afterARestartASensorIsSoughtDownwardsAndOnlyThenTheNewestCommandCarriedOut() {
        OneSlot slot = new OneSlot(lines, gauge(Zeroing.SENSOR), Pits.signal(0, false), RESET);

        slot.apply(1, 100, 0);
        slot.until(SECOND);
        slot.shows().forget(0, SECOND, SECOND + SECOND / 10);
        slot.apply(1, 100, SECOND + SECOND / 5);
        slot.apply(2, 300, SECOND + SECOND / 4);
        slot.until(Long.MAX_VALUE);

        assertEquals(
                List.of(
                        "0 moved 0 0 100000000 100",
                        "1100000000 moved 0 100 2100000000 0",
                        "2100000000 moved 0 0 2400000000 300"),
                lines.only("moved"));
        assertEquals(List.of("0 shown 0 1", "2100000000 shown 0 2"), lines.only("shown"));
    }

    @Test
    void aStopIsDrivenAgainstForAsLongAsTheWholeRangeTakes() {
        OneSlot slot = new OneSlot(lines, gauge(Zeroing.STOP), Pits.signal(0, false), RESET);

        slot.apply(1, 100, 0);
        slot.until(SECOND);
        slot.shows().forget(0, SECOND, SECOND + SECOND / 10);
        slot.apply(1, 100, SECOND + SECOND / 5);
        slot.until(Long.MAX_VALUE);

        assertEquals("1100000000 moved 0 100 2100000000 0", lines.only("moved").get(1));
        assertEquals(
                List.of("0 shown 0 1", "11100000000 shown 0 1"), lines.only("shown"), "1000 units at 100 a second");
    }

    @Test
    void endlessNeedleFindsItsSensorWithinOneTurn() {
        OneSlot slot = new OneSlot(lines, gauge(Zeroing.SENSOR), Pits.signal(0, true), RESET);

        slot.apply(1, 900, 0);
        slot.until(SECOND);
        slot.shows().forget(0, SECOND, SECOND + SECOND / 10);
        slot.until(Long.MAX_VALUE);

        assertEquals(
                "1100000000 moved 0 -100 10100000000 -1000", lines.only("moved").get(1));
    }

    @Test
    void foundZeroMakesUpForLostStepsButNotForASlippedNeedle() {
        Fault loses = new Fault(FaultKind.LOST_STEPS, 0, 0, 0, -1, 0, SECOND, 1, 10);
        Fault slips = new Fault(FaultKind.NEEDLE_SLIPPED, 0, 0, 0, -1, SECOND / 2, Fault.TO_THE_END, 0, 7);
        OneSlot slot = new OneSlot(lines, gauge(Zeroing.SENSOR), Pits.signal(0, false), RESET, loses, slips);

        slot.apply(1, 200, 0);
        slot.until(SECOND);
        slot.shows().forget(0, SECOND, SECOND + SECOND / 10);
        slot.apply(1, 200, 4 * SECOND);
        slot.until(Long.MAX_VALUE);

        List<String> ways = lines.only("moved").stream()
                .map(line -> line.split(" ")[3] + " " + line.split(" ")[5])
                .toList();
        assertEquals(List.of("0 190", "190 197", "197 7", "7 207"), ways);
    }

    @Test
    void restartWhileItLooksForItsZeroBeginsAnew() {
        OneSlot slot = new OneSlot(lines, gauge(Zeroing.SENSOR), Pits.signal(0, false), RESET);

        slot.apply(1, 100, 0);
        slot.until(SECOND);
        slot.shows().forget(0, SECOND, SECOND);
        slot.until(SECOND + SECOND / 2);
        slot.shows().forget(0, SECOND + SECOND / 2, 2 * SECOND);
        slot.until(Long.MAX_VALUE);

        assertEquals(
                List.of(
                        "0 moved 0 0 100000000 100",
                        "1000000000 moved 0 100 2000000000 0",
                        "1500000000 moved 0 50 1500000000 50",
                        "2000000000 moved 0 50 2500000000 0"),
                lines.only("moved"));
    }

    @Test
    void filamentIsShownOnceItGlowsAndOnceItHasFaded() {
        OneSlot slot = new OneSlot(lines, filament(), onOff());

        slot.apply(1, 1, SECOND);
        slot.apply(2, 0, 2 * SECOND);
        slot.until(Long.MAX_VALUE);

        assertEquals(List.of("1060000000 shown 0 1", "2090000000 shown 0 2"), lines.only("shown"));
    }

    @Test
    void blinkShorterThanAFilamentTakesIsNeverShown() {
        OneSlot slot = new OneSlot(lines, filament(), onOff());

        slot.apply(1, 1, SECOND);
        slot.apply(2, 0, SECOND + 30 * Pits.MILLI);
        slot.until(Long.MAX_VALUE);

        assertEquals(
                List.of("1075000000 shown 0 2"), lines.only("shown"), "half way up in 30 ms, and half of 90 ms down");
    }

    @Test
    void filamentGoesDarkWithItsNodeAndGlowsAgainWhenTold() {
        OneSlot slot = new OneSlot(lines, filament(), onOff(), RESET);

        slot.apply(1, 1, 0);
        slot.until(SECOND);
        slot.shows().forget(0, SECOND, SECOND + SECOND / 10);
        slot.apply(1, 1, SECOND + 45 * Pits.MILLI);
        slot.until(Long.MAX_VALUE);

        assertEquals(
                List.of("60000000 shown 0 1", "1075000000 shown 0 1"), lines.only("shown"), "from half dark: 30 ms");
    }

    @Test
    void flagIsShownWhenItHasTurnedAndTurnsBackOnlyAsFarAsItCame() {
        Indicator flag =
                new Indicator("flag", Kind.FLAG, List.of(0), 80 * Pits.MILLI, 0, 0, Indicator.Blocks.NOTHING, 0);
        OneSlot slot = new OneSlot(lines, flag, onOff());

        slot.apply(1, 1, SECOND);
        slot.apply(2, 0, 2 * SECOND);
        slot.apply(3, 1, 2 * SECOND + 20 * Pits.MILLI);
        slot.until(Long.MAX_VALUE);

        assertEquals(List.of("1080000000 shown 0 1", "2040000000 shown 0 3"), lines.only("shown"));
    }

    @Test
    void brightnessOfABacklightZoneChangesAtTheNextPeriodOfItsDimmer() {
        long period = 2 * Pits.MILLI;
        Indicator zone =
                new Indicator("zone", Kind.BACKLIGHT_ZONE, List.of(0), 0, period, 0, Indicator.Blocks.NOTHING, 0);
        OneSlot slot = new OneSlot(lines, zone, Pits.signal(0, false));

        slot.apply(1, 300, SECOND);
        slot.apply(2, 700, 2 * SECOND);
        slot.until(Long.MAX_VALUE);

        long first = Long.parseLong(lines.only("shown").get(0).split(" ")[0]);
        long second = Long.parseLong(lines.only("shown").get(1).split(" ")[0]);
        assertTrue(first >= SECOND && first < SECOND + period, "shown at " + first);
        assertEquals(0, (second - first) % period);
    }

    private static Indicator moving(Kind kind, Motion motion) {
        return new Indicator("moves", kind, List.of(0), 0, 0, 0, Indicator.Blocks.NOTHING, motion, Glow.NONE);
    }

    /** 1000 units a second at once; its zero at 100 units a second. */
    private static Indicator gauge(Zeroing zeroing) {
        return moving(Kind.GAUGE_STEPPER, new Motion(1000, 0, 0, zeroing, 100));
    }

    /** 200 units a second after half a second. */
    private static Indicator stepper(Zeroing zeroing) {
        return moving(Kind.STEPPER, new Motion(200, 400, 0.5, zeroing, zeroing == Zeroing.NONE ? 0 : 100));
    }

    /** 60 ms to glow, 90 ms to fade. */
    private static Indicator filament() {
        return new Indicator(
                "filament",
                Kind.FILAMENT_LAMP,
                List.of(0),
                0,
                0,
                0,
                Indicator.Blocks.NOTHING,
                Motion.NONE,
                new Glow(60 * Pits.MILLI, 90 * Pits.MILLI));
    }

    private static Signal onOff() {
        return new Signal("on", "on/off", 0, 1, 1, false, "on", 1, 0, 0);
    }
}
