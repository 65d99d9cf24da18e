package dropline.bus.fault;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

final class StrikeTimesTest {
    private static final long SECOND = 1_000_000_000L;

    @Test
    void withoutARateItStrikesOnceAtTheBeginOfItsSpan() {
        StrikeTimes times = new StrikeTimes(reset(3 * SECOND, Fault.TO_THE_END, 0), 1, "node");

        assertEquals(3 * SECOND, times.nextNanos());
        times.pass();
        assertEquals(StrikeTimes.NEVER, times.nextNanos());
        times.pass();
        assertEquals(StrikeTimes.NEVER, times.nextNanos());
    }

    @Test
    void withARateItStrikesSoOftenASecondAndOnlyInItsSpan() {
        List<Long> instants = instants(new StrikeTimes(reset(10 * SECOND, 1010 * SECOND, 4), 1, "node"));

        assertEquals(4000, instants.size(), 4 * Math.sqrt(4000), "four standard deviations of a Poisson count");
        assertTrue(instants.get(0) > 10 * SECOND);
        assertTrue(instants.get(instants.size() - 1) < 1010 * SECOND);
        for (int i = 1; i < instants.size(); i++) {
            assertTrue(instants.get(i) > instants.get(i - 1));
        }
    }

    @Test
    void sameSeedSameInstantsOtherThingOtherInstants() {
        Fault fault = reset(0, 100 * SECOND, 1);

        List<Long> first = instants(new StrikeTimes(fault, 7, "left"));

        assertEquals(first, instants(new StrikeTimes(fault, 7, "left")));
        assertFalse(first.equals(instants(new StrikeTimes(fault, 7, "right"))));
        assertFalse(first.equals(instants(new StrikeTimes(fault, 8, "left"))));
    }

    @Test
    void endlessSpanWithARateSoSmallThatItNeverStrikesDoesNotOverflow() {
        StrikeTimes times = new StrikeTimes(reset(SECOND, Fault.TO_THE_END, 1e-300), 1, "node");

        assertEquals(StrikeTimes.NEVER, times.nextNanos());
    }

    @Test
    void chanceStrikesItsShareOfAllAndNothingOutsideItsSpan() {
        Chance chance = new Chance(chance(SECOND, 2 * SECOND, 0.25), 1, "node");

        int struck = 0;
        for (int ordinal = 0; ordinal < 10_000; ordinal++) {
            assertFalse(chance.strikes(SECOND - 1, ordinal));
            assertFalse(chance.strikes(2 * SECOND, ordinal));
            struck += chance.strikes(SECOND, ordinal) ? 1 : 0;
        }

        assertEquals(2500, struck, 4 * Math.sqrt(10_000 * 0.25 * 0.75), "four standard deviations");
    }

    @Test
    void chanceOfOneStrikesAlways() {
        Chance chance = new Chance(chance(0, Fault.TO_THE_END, 1), 1, "node");

        for (int ordinal = 0; ordinal < 10_000; ordinal++) {
            assertTrue(chance.strikes(ordinal, ordinal));
        }
    }

    @Test
    void eachTakesOnlyItsOwnTiming() {
        assertThrows(IllegalArgumentException.class, () -> new Chance(reset(0, SECOND, 0), 1, "node"));
        assertThrows(IllegalArgumentException.class, () -> new StrikeTimes(chance(0, SECOND, 1), 1, "node"));
    }

    private static List<Long> instants(StrikeTimes times) {
        List<Long> instants = new ArrayList<>();
        while (times.nextNanos() != StrikeTimes.NEVER) {
            assertEquals(instants.size() + 1, times.number());
            instants.add(times.nextNanos());
            times.pass();
        }
        return instants;
    }

    private static Fault reset(long from, long until, double rate) {
        return new Fault(FaultKind.RESET, 0, 0, -1, -1, from, until, rate, 0);
    }

    private static Fault chance(long from, long until, double rate) {
        return new Fault(FaultKind.DRIVER_RELEASED_LATE, 0, 0, -1, -1, from, until, rate, 10);
    }
}
