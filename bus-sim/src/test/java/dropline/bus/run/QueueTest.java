package dropline.bus.run;

import static dropline.bus.Pits.MICRO;
import static dropline.bus.Pits.MILLI;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.Pits;
import dropline.bus.chance.Distribution;
import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.pit.Profile;
import dropline.protocol.sized.Sized;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Queues whose answer is published, built from controller, wire and nodes. A value that waits is a customer, its
 * characters are its service, a poll without it is the switch to the next queue; every arrival changes another signal,
 * so that none takes another's place. Times are in units of 1 ms. Each mean must lie within four standard errors, from
 * the means of 40 batches, and that error must be small.
 *
 * <p>Not to be had from these parts: exhaustive polling (a node is never polled again before its turn), and random
 * service (a value's length on the wire is fixed), so neither M/M/1 nor D/M/1 and their ages, nor set B of the polling
 * formulas as it is printed; its random switch is here with fixed service.
 */
final class QueueTest {
    private static final double ERRORS = 4;

    /**
     * Takagi, "Queuing analysis of polling models", ACM Computing Surveys 20(1), 1988, symmetric 1-limited service
     * (formula from memory, confirmed by simulation elsewhere): 10 queues, 0.02 arrivals each, service 2, switch 0.5.
     */
    @Test
    void aPollThatCarriesOneValueIsOneLimitedPolling() {
        QueueRun run = new QueueRun(polls(10, 1, 500_000, 100, 10, Pits.profile(50 * MICRO), 50 * MICRO), 0.02);

        double expected = oneLimited(10, 0.02, 2, 0.5, 0);
        assertEquals(6.0, expected, 1e-9);
        run.run(2, 30);

        assertNear(expected, run.waits(), 0.02);
    }

    /** The same source, gated service: a poll that carries all that waits leaves what comes meanwhile for the next. */
    @Test
    void aPollThatCarriesAllThatWaitsIsGatedPolling() {
        QueueRun run = new QueueRun(polls(10, 32, 500_000, 100, 10, Pits.profile(50 * MICRO), 50 * MICRO), 0.02);

        double expected = gated(10, 0.02, 2, 0.5, 0);
        assertEquals(5.0, expected, 1e-9);
        run.run(2, 30);

        assertNear(expected, run.waits(), 0.02);
    }

    /** The same source with a random switch, exponential of mean 0.4 beside two characters of 2.5 us. */
    @Test
    void aRandomReplyGapIsARandomSwitch() {
        Profile random = gap(Distribution.exponential(0, 400 * MICRO, Long.MAX_VALUE));
        QueueRun run = new QueueRun(polls(5, 1, 4_000_000, 400, 1, random, 0), 0.1);

        double expected = oneLimited(5, 0.1, 1, 0.405, 0.16);
        assertEquals(4.83, oneLimited(5, 0.1, 1, 0.4, 0.16), 0.01);
        run.run(1, 30);

        assertNear(expected, run.waits(), 0.03);
    }

    /**
     * Pollaczek and Khinchine: M/D/1 at half load waits 0.5 service times. Polls fill the time in which nothing waits,
     * so that an arrival finds one of 10 us under way: half of it more (M/G/1 with vacations, Doshi 1986, from memory).
     *
     * <p>Kaul, Yates, Gruteser, INFOCOM 2012: the age behind it, first come, first served (formula from memory,
     * confirmed by simulation elsewhere). Its mean peak is an interarrival and a time in the system: elementary.
     */
    @Test
    void broadcastsOfOneValueAreAQueueWithFixedServiceAndItsAge() {
        double load = 0.5;
        double age = 1 / (2 * (1 - load)) + 0.5 + (1 - load) * Math.exp(load) / load;
        assertEquals(3.1487, age, 0.0001);
        Sized sized = new Sized(1, List.of(new Sized.ReplyChoice(1, 1)), 0, 200, 1, 0);

        QueueRun run = new QueueRun(
                new QueueRun.Queues(1, 64, StateDelivery.BROADCAST, 2_000_000, sized, Pits.profile(0), 0, MILLI), load);
        run.run(1, 6);

        assertNear(0.5 + 0.005, run.waits(), 0.05);
        assertNear(age, run.ages(), 0.03);
        assertNear(1 / load + 1 + 0.5 + 0.005, run.peaks(), 0.03);
    }

    private static double oneLimited(int queues, double rate, double service, double change, double variance) {
        double load = queues * rate * service;
        double all = queues * rate;
        return variance / (2 * change)
                + (all * service * service + change * (queues + load) + all * variance)
                        / (2 * (1 - load - all * change));
    }

    private static double gated(int queues, double rate, double service, double change, double variance) {
        double load = queues * rate * service;
        return variance / (2 * change)
                + (queues * rate * service * service + change * (queues + load)) / (2 * (1 - load));
    }

    private static void assertNear(double expected, QueueRun.Means means, double tolerance) {
        String figures = "expected " + expected + ", found " + means;
        assertTrue(ERRORS * means.standardError() < tolerance * expected, figures);
        assertTrue(Math.abs(means.mean() - expected) < ERRORS * means.standardError(), figures);
    }

    private static Profile gap(Distribution gap) {
        Profile usual = Pits.profile(0);
        return new Profile(usual.replyFrom(), gap, 0, 0, 0, 2, 63, List.of(), 0, 0, 0, usual.transceiver());
    }

    private static QueueRun.Queues polls(
            int nodes, int most, int baud, int valueChars, int frameChars, Profile profile, long gapNanos) {
        Sized sized = new Sized(frameChars, List.of(new Sized.ReplyChoice(frameChars, 1)), 0, valueChars, most, 0);
        return new QueueRun.Queues(nodes, 32, StateDelivery.ADDRESSED, baud, sized, profile, gapNanos, 50 * MILLI);
    }
}
