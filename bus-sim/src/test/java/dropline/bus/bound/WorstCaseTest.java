package dropline.bus.bound;

import static dropline.bus.Pits.MICRO;
import static dropline.bus.Pits.MILLI;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.Pits;
import dropline.bus.bound.Obstacle.Kind;
import dropline.bus.chance.Distribution;
import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Indicator.Blocks;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Signal;
import dropline.bus.pit.Transceiver;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/**
 * Bounds worked out by hand: 20 us a character, requests and replies of 10, a reply gap of 100 us, 50 us between polls:
 * 550 us a poll. Rounding up may add a nanosecond a frame. "Just missed", the longest cycle, the own transaction and
 * for a dead node each try with its time-out: elementary.
 */
final class WorstCaseTest {
    private static final long ROUNDING = 20;
    private static final List<Signal> SIGNALS = List.of(Pits.signal(0, false), Pits.signal(1, false));

    @Test
    void cycleIsTheSumOfItsPolls() {
        assertNear(
                3 * 550 * MICRO,
                of(three(StateDelivery.ADDRESSED, false), WorstCase.NONE).cycle());
    }

    @Test
    void deadNodeCostsATimeOutForEachTry() {
        long tries = 3 * (200 + 1000 + 50) * MICRO;

        assertNear(
                2 * 550 * MICRO + tries,
                of(three(StateDelivery.ADDRESSED, false), 1).cycle());
    }

    @Test
    void addressedValueWaitsForOneCycleAndItsOwnRequest() {
        Pit pit = three(StateDelivery.ADDRESSED, true);
        Bound bound = of(pit, WorstCase.NONE).update(0, Pits.lamp(0), 0);

        // a value adds 4 characters; it is heard half a bit before the end of its request
        long cycle = 2 * (550 + 80) * MICRO + 550 * MICRO;
        assertNear(cycle + 280 * MICRO - MICRO, bound);
        assertEquals(0, bound.nanos(Stage.NODE_WAIT));
    }

    @Test
    void broadcastValueWaitsForABroadcastJustBegunAndForOnePoll() {
        Bound bound = of(three(StateDelivery.BROADCAST, true), WorstCase.NONE).update(0, Pits.lamp(0), 0);

        // a frame with both values has 14 characters; the gap is 50 us
        assertNear((280 + 50 + 550 + 280) * MICRO - MICRO, bound);
    }

    @Test
    void valueOnADeadNodeHasNoBound() {
        assertKind(Kind.DEAD, of(three(StateDelivery.BROADCAST, true), 0).update(0, Pits.lamp(0), 0));
    }

    @Test
    void flagSlowerThanStatesMayNeverGetThere() {
        Indicator flag = new Indicator("flag", Indicator.Kind.FLAG, List.of(0), MILLI, 0, 0, Blocks.NOTHING, 0);
        Pit pit = pit(StateDelivery.ADDRESSED, Pits.profile(100 * MICRO), flag);

        Bound often = WorstCase.of(pit, 0, WorstCase.NONE, 900 * MILLI).update(0, flag, 0);
        Bound rarely = WorstCase.of(pit, 0, WorstCase.NONE, 2_000 * MILLI).update(0, flag, 0);

        assertKind(Kind.REPLACED, often);
        assertEquals(1000 * MILLI, often.nanos(Stage.DEVICE));
        assertTrue(rarely.isFinite());
    }

    @Test
    void whatCanGoWrongAgainAndAgainLeavesNoBound() {
        Distribution gap = Distribution.constant(100 * MICRO);
        assertKind(null, cycle(gap, 0, 0, List.of()));
        assertKind(Kind.LATE_REPLY, cycle(Distribution.constant(900 * MICRO), 0, 0, List.of()));
        assertKind(Kind.NO_MAXIMUM, cycle(Distribution.exponential(0, MICRO, Long.MAX_VALUE), 0, 0, List.of()));
        assertKind(Kind.LATE_RELEASE, cycle(gap, 51 * MICRO, 0, List.of()));
        assertKind(null, cycle(gap, 50 * MICRO, 0, List.of()));
        // 8N1 at 16 samples: from 95.36 % to 104.58 % (Microchip, "Asynchronous Operational Range")
        assertKind(Kind.CLOCK, update(gap, 0, 476_000, List.of()));
        assertKind(null, update(gap, 0, 479_000, List.of()));
    }

    @Test
    void buffersThatDoNotLastLeaveTheirNodeWithoutABound() {
        Distribution gap = Distribution.constant(100 * MICRO);
        // two characters of 20 us in the FIFO
        assertKind(null, update(gap, 0, 0, List.of(task(39 * MICRO, Blocks.INTERRUPTS))));
        assertKind(Kind.FIFO_OVERRUN, update(gap, 0, 0, List.of(task(41 * MICRO, Blocks.INTERRUPTS))));
        // 63 characters in the ring, 6 pauses of 50 us between frames of 10; two tasks may meet
        Profile.Task half = task(750 * MICRO, Blocks.LOOP);
        assertKind(null, update(gap, 0, 0, List.of(half)));
        assertKind(Kind.RING_OVERRUN, update(gap, 0, 0, List.of(half, half)));
    }

    private static Profile.Task task(long takesNanos, Blocks blocks) {
        return new Profile.Task("task", 10 * MILLI, takesNanos, blocks);
    }

    private static Bound cycle(Distribution gap, long tail, long clockHz, List<Profile.Task> tasks) {
        return of(pit(StateDelivery.ADDRESSED, profile(gap, tail, clockHz, tasks), Pits.lamp(0)), WorstCase.NONE)
                .cycle();
    }

    private static Bound update(Distribution gap, long tail, long clockHz, List<Profile.Task> tasks) {
        return of(pit(StateDelivery.ADDRESSED, profile(gap, tail, clockHz, tasks), Pits.lamp(0)), WorstCase.NONE)
                .update(0, Pits.lamp(0), 0);
    }

    private static Profile profile(Distribution gap, long tail, long clockHz, List<Profile.Task> tasks) {
        return new Profile(
                Profile.ReplyFrom.INTERRUPT,
                gap,
                0,
                tail,
                0,
                2,
                63,
                tasks,
                0,
                clockHz,
                clockHz == 0 ? 0 : 1,
                Transceiver.USUAL);
    }

    private static Pit pit(StateDelivery delivery, Profile profile, Indicator shows) {
        return Pits.pit(
                SIGNALS,
                Pits.controller(delivery, MILLI, 2),
                List.of(Pits.node("one", 1, profile, List.of(shows), List.of())));
    }

    private static Pit three(StateDelivery delivery, boolean shows) {
        Profile profile = Pits.profile(100 * MICRO);
        List<Indicator> none = List.of();
        List<Node> nodes = List.of(
                Pits.node("one", 1, profile, shows ? List.of(Pits.lamp(0)) : none, List.of()),
                Pits.node("two", 2, profile, shows ? List.of(Pits.lamp(1)) : none, List.of()),
                Pits.node("three", 3, profile, none, List.of()));
        return Pits.pit(SIGNALS, Pits.controller(delivery, MILLI, 2), nodes);
    }

    private static WorstCase of(Pit pit, int dead) {
        return WorstCase.of(pit, 0, dead);
    }

    @Test
    void pairThatNobodyHoldsLeavesNoBound() {
        Pit held = three(StateDelivery.ADDRESSED, false);
        Segment one = held.segments().get(0);
        Segment floating =
                new Segment(one.name(), one.baud(), one.format(), one.protocol(), one.controller(), one.nodes(), false);

        assertKind(
                Kind.FLOATING_PAIR,
                of(new Pit("pit", 0, null, held.signals(), List.of(floating)), WorstCase.NONE)
                        .cycle());
    }

    private static void assertNear(long expected, Bound bound) {
        assertTrue(
                bound.nanos() >= expected && bound.nanos() <= expected + ROUNDING, bound + " but expected " + expected);
    }

    private static void assertKind(@org.jspecify.annotations.Nullable Kind kind, Bound bound) {
        assertEquals(
                kind,
                bound.isFinite()
                        ? null
                        : Objects.requireNonNull(bound.obstacle()).kind());
    }
}
