package dropline.bus.indicator;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dropline.bus.Pits;
import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.pit.Indicator;
import dropline.bus.trace.TraceLines;
import java.util.List;
import org.junit.jupiter.api.Test;

final class ShowsTest {
    private static final long SECOND = 1_000_000_000L;
    private static final Fault RESET =
            new Fault(FaultKind.RESET, 0, 0, -1, -1, SECOND, Fault.TO_THE_END, 0, SECOND / 10);

    private final TraceLines lines = new TraceLines();

    @Test
    void needleTurnsRoundFromWhereItStandsWhenCommandedAnew() {
        OneSlot run = run(needle(Indicator.Kind.GAUGE_STEPPER, 0), false);

        run.shows().apply(0, 1, 400, 0, 0);
        run.shows().apply(0, 2, 100, 2 * SECOND, 2 * SECOND);
        run.order().release(Long.MAX_VALUE);

        assertEquals(
                List.of("0 moved 0 0 4000000000 400", "2000000000 moved 0 200 3000000000 100"), lines.only("moved"));
        assertEquals(List.of("0 shown 0 1", "2000000000 shown 0 2"), lines.only("shown"));
    }

    @Test
    void headingNeedleTakesTheShortWayRound() {
        OneSlot run = run(needle(Indicator.Kind.GAUGE_STEPPER, 0), true);

        run.shows().apply(0, 1, 900, 0, 0);
        run.order().release(Long.MAX_VALUE);

        assertEquals(List.of("0 moved 0 0 1000000000 -100"), lines.only("moved"));
    }

    @Test
    void servoActsOnlyOnTheNewestCommandOfItsFrame() {
        OneSlot run = run(needle(Indicator.Kind.SERVO, 20 * Pits.MILLI), false);

        run.shows().apply(0, 1, 400, SECOND, SECOND);
        run.shows().apply(0, 2, 100, SECOND + 1, SECOND + 1);
        run.order().release(Long.MAX_VALUE);

        assertEquals(1, lines.only("moved").size());
        assertEquals(1, lines.only("shown").size());
        String moved = lines.only("moved").get(0);
        long start = Long.parseLong(moved.split(" ")[0]);
        assertEquals(start + " moved 0 0 " + (start + SECOND) + " 100", moved);
    }

    @Test
    void displayShowsAtTheEndOfTheRefreshOnlyWhatIsNewestThen() {
        Indicator digits = new Indicator(
                "digits",
                Indicator.Kind.DIGITS,
                List.of(0),
                0,
                50 * Pits.MILLI,
                Pits.MILLI,
                Indicator.Blocks.NOTHING,
                0);
        OneSlot run = run(digits, false);
        run.shows().refreshedBy(0, applied -> 70 * Pits.MILLI);

        run.shows().apply(0, 1, 1, 10 * Pits.MILLI, 0);
        run.shows().apply(0, 2, 2, 20 * Pits.MILLI, 0);
        run.order().release(Long.MAX_VALUE);

        assertEquals(List.of("70000000 shown 0 2"), lines.only("shown"));
        assertEquals(2, lines.only("applied").size());
    }

    @Test
    void displayShowsOnlyWhatIsNewestThoughTheNextRefreshIsPlannedAlready() {
        Indicator digits = new Indicator(
                "digits",
                Indicator.Kind.DIGITS,
                List.of(0),
                0,
                50 * Pits.MILLI,
                30 * Pits.MILLI,
                Indicator.Blocks.NOTHING,
                0);
        OneSlot run = run(digits, false);
        run.shows().refreshedBy(0, applied -> applied <= 40 * Pits.MILLI ? 70 * Pits.MILLI : 120 * Pits.MILLI);

        run.shows().apply(0, 1, 1, 10 * Pits.MILLI, 0);
        run.shows().apply(0, 2, 2, 20 * Pits.MILLI, 0);
        run.shows().apply(0, 3, 3, 60 * Pits.MILLI, 0);
        run.order().release(Long.MAX_VALUE);

        assertEquals(List.of("70000000 shown 0 2", "120000000 shown 0 3"), lines.only("shown"));
    }

    @Test
    void valueSentAgainChangesNothing() {
        OneSlot run = run(Pits.lamp(0), false);

        run.shows().apply(0, 1, 1, 5, 5);
        run.shows().apply(0, 1, 1, 9, 9);
        run.order().release(Long.MAX_VALUE);

        assertEquals(List.of("5 applied 0 1 5", "5 shown 0 1"), lines.lines());
    }

    @Test
    void nodeThatForgetsTakesAndShowsTheSameValueAgain() {
        OneSlot run = run(Pits.lamp(0), false, RESET);

        run.shows().apply(0, 1, 1, 5, 5);
        run.until(9);
        run.shows().forget(0, 9, 10);
        run.shows().apply(0, 1, 1, 20, 18);
        run.until(Long.MAX_VALUE);

        assertEquals(List.of("5 applied 0 1 5", "5 shown 0 1", "20 applied 0 1 18", "20 shown 0 1"), lines.lines());
    }

    @Test
    void whatANodeWasAboutToTakeAndShowComesToNothingWhenItForgets() {
        Indicator digits = new Indicator(
                "digits",
                Indicator.Kind.DIGITS,
                List.of(0),
                0,
                50 * Pits.MILLI,
                Pits.MILLI,
                Indicator.Blocks.NOTHING,
                0);
        OneSlot run = run(digits, false, RESET);
        run.shows().refreshedBy(0, applied -> 70 * Pits.MILLI);

        run.shows().apply(0, 1, 1, 10 * Pits.MILLI, 9);
        run.shows().apply(0, 2, 2, 60 * Pits.MILLI, 9);
        run.until(50 * Pits.MILLI);
        run.shows().forget(0, 50 * Pits.MILLI, 51 * Pits.MILLI);
        run.shows().apply(0, 2, 2, 65 * Pits.MILLI, 64);
        run.until(Long.MAX_VALUE);

        assertEquals(List.of("10000000 applied 0 1 9", "65000000 applied 0 2 64", "70000000 shown 0 2"), lines.lines());
    }

    @Test
    void needleOfANodeThatForgetsStopsWhereItIsUntilItIsCommandedAgain() {
        OneSlot run = run(needle(Indicator.Kind.GAUGE_STEPPER, 0), false, RESET);

        run.shows().apply(0, 1, 400, 0, 0);
        run.until(SECOND);
        run.shows().forget(0, SECOND, SECOND);
        run.shows().apply(0, 1, 400, 2 * SECOND, 2 * SECOND);
        run.until(Long.MAX_VALUE);

        assertEquals(
                List.of(
                        "0 moved 0 0 4000000000 400",
                        "1000000000 moved 0 100 1000000000 100",
                        "2000000000 moved 0 100 5000000000 400"),
                lines.only("moved"));
        assertEquals(List.of("0 shown 0 1", "2000000000 shown 0 1"), lines.only("shown"));
    }

    @Test
    void onlyANodeThatAFaultStrikesMayForget() {
        OneSlot run = run(Pits.lamp(0), false);

        assertThrows(IllegalStateException.class, () -> run.shows().forget(0, 5, 6));
    }

    @Test
    void brownOutLetsEveryNodeOfItsSegmentForget() {
        OneSlot run =
                run(Pits.lamp(0), false, new Fault(FaultKind.BROWN_OUT, 0, -1, -1, -1, 0, Fault.TO_THE_END, 0, 1));

        run.shows().apply(0, 1, 1, 5, 5);
        run.shows().forget(0, 3, 4);
        run.until(Long.MAX_VALUE);

        assertEquals(List.of(), lines.lines());
    }

    private static Indicator needle(Indicator.Kind kind, long frameNanos) {
        return new Indicator("needle", kind, List.of(0), 0, frameNanos, 0, Indicator.Blocks.NOTHING, 100);
    }

    private OneSlot run(Indicator indicator, boolean wraps, Fault... faults) {
        return new OneSlot(lines, indicator, Pits.signal(0, wraps), faults);
    }
}
