package dropline.harness.measure;

import static dropline.harness.measure.SmallPit.GEAR;
import static dropline.harness.measure.SmallPit.GEAR_LAMP;
import static dropline.harness.measure.SmallPit.MS;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Ages and waits against closed forms that can be worked out by hand. */
class ClosedFormsTest {
    private static final long PERIOD = 20 * MS;
    private static final long DELAY = 3 * MS;

    private final SegmentMeasures measures = SmallPit.measures();

    /** Age of information, periodic with a fixed delay: mean T/2 + D, peak T + D. Elementary. */
    @Test
    void ageOfAPeriodicValueWithFixedDelayIsHalfThePeriodPlusTheDelay() {
        for (int n = 0; n <= 1000; n++) {
            changeAt(n * PERIOD, n + 1);
            measures.shown(n * PERIOD + DELAY, GEAR_LAMP, n + 1);
        }
        measures.ended(1000 * PERIOD + DELAY);

        SlotMeasure lamp = SmallPit.slot(measures, GEAR_LAMP);
        assertEquals(13 * MS, lamp.ageMeanNanos());
        assertEquals(23 * MS, lamp.agePeakNanos());
        assertEquals(DELAY, lamp.latency().maxNanos());
    }

    /** The same with each value lost with probability p: mean T (1 + p) / (2 (1 - p)) + D. Renewal-reward theorem. */
    @Test
    void ageWithIndependentLossFollowsTheRenewalFormula() {
        long seed = 20;
        SplittableRandom random = new SplittableRandom(seed);
        int states = 200_000;
        double loss = 0.1;
        for (int n = 0; n <= states; n++) {
            changeAt(n * PERIOD, n + 1);
            if (random.nextDouble() >= loss) {
                measures.shown(n * PERIOD + DELAY, GEAR_LAMP, n + 1);
            }
        }
        measures.ended(states * PERIOD + DELAY);

        double expected = PERIOD * (1 + loss) / (2 * (1 - loss)) + DELAY;
        assertEquals(15.222, expected / MS, 0.001);
        assertEquals(
                expected, (double) SmallPit.slot(measures, GEAR_LAMP).ageMeanNanos(), expected * 0.005, "seed " + seed);
    }

    /** A steady panel is never older than a state period, though nothing is sent to it. By the definition of age. */
    @Test
    void aSteadyValueIsNeverOlderThanAStatePeriod() {
        changeAt(0, 1);
        measures.shown(DELAY, GEAR_LAMP, 1);
        for (int n = 1; n <= 500; n++) {
            measures.stateSent(n * PERIOD);
        }
        measures.ended(500 * PERIOD);

        assertEquals(PERIOD, SmallPit.slot(measures, GEAR_LAMP).agePeakNanos());
    }

    /** A value that returns is as young as the newest state that held it. By the definition of age. */
    @Test
    void aValueShownLateIsAsYoungAsTheNewestStateThatHeldIt() {
        changeAt(0, 1);
        measures.shown(0, GEAR_LAMP, 1);
        measures.stateChanged(PERIOD, GEAR, 2, 5);
        measures.stateSent(PERIOD);
        measures.stateSent(2 * PERIOD);
        measures.stateSent(3 * PERIOD);
        measures.shown(3 * PERIOD + DELAY, GEAR_LAMP, 2);
        measures.ended(3 * PERIOD + 2 * DELAY);

        SlotMeasure lamp = SmallPit.slot(measures, GEAR_LAMP);
        long before = 3 * PERIOD + DELAY;
        double integral = 0.5 * before * before + DELAY * 1.5 * DELAY;
        assertEquals(before, lamp.agePeakNanos());
        assertEquals(Math.round(integral / (before + DELAY)), lamp.ageMeanNanos());
    }

    /**
     * A random event on a poll cycle waits E[C^2] / 2 E[C]: 12.5 ms on cycles of 10 and 30 ms, not 10. Renewal theory.
     */
    @Test
    void aRandomEventOnAlternatingCyclesWaitsTwelveAndAHalfMilliseconds() {
        changeAt(0, 1);
        measures.shown(0, GEAR_LAMP, 1);
        long round = 40 * MS;
        int events = 40_000;
        for (int n = 0; n < events; n++) {
            long phase = (2L * n + 1) * round / (2L * events);
            long start = (n + 1) * round;
            changeAt(start + phase, n + 2);
            long poll = phase < 10 * MS ? 10 * MS : round;
            measures.shown(start + poll, GEAR_LAMP, n + 2);
        }

        assertEquals(
                12.5 * MS, (double) SmallPit.slot(measures, GEAR_LAMP).latency().meanNanos(), MS / 1000.0);
    }

    /** Just missed: no wait is longer than the longest cycle and the transaction itself. Elementary. */
    @Test
    void aJustMissedChangeWaitsTheLongestCycleAndItsOwnTransaction() {
        long seed = 12;
        SplittableRandom random = new SplittableRandom(seed);
        long transaction = MS / 2;
        changeAt(0, 1);
        measures.shown(0, GEAR_LAMP, 1);
        long poll = 100 * MS;
        long longest = 0;
        for (int n = 0; n < 20_000; n++) {
            long cycle = 5 * MS + random.nextLong(10 * MS);
            longest = Math.max(longest, cycle);
            long changed = n % 100 == 0 ? poll + 1 : poll + 1 + random.nextLong(cycle - 1);
            measures.cycleStarted(poll, n + 1);
            changeAt(changed, n + 2);
            poll += cycle;
            measures.shown(poll + transaction, GEAR_LAMP, n + 2);
        }

        long max = SmallPit.slot(measures, GEAR_LAMP).latency().maxNanos();
        assertTrue(max <= longest + transaction - 1, "max " + max + " longest " + longest + " seed " + seed);
        assertTrue(max > longest - MS, "max " + max + " longest " + longest + " seed " + seed);
    }

    private void changeAt(long atNanos, int serial) {
        measures.stateChanged(atNanos, GEAR, serial, serial);
        measures.stateSent(atNanos);
    }
}
