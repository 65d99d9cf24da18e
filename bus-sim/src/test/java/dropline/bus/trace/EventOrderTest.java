package dropline.bus.trace;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import dropline.bus.chance.Draws;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

final class EventOrderTest {
    private final TraceLines lines = new TraceLines();
    private final EventOrder order = new EventOrder(lines, (rank, at, index, serial) -> serial != 13);

    @Test
    void eventsComeSortedByTimeThenRankThenTalker() {
        order.post(5, Rank.GAVE_UP, 2, 1, 0, 0);
        order.post(5, Rank.TIMED_OUT, 2, 1, 1, 0);
        order.post(5, Rank.TIMED_OUT, 1, 1, 1, 0);
        order.post(3, Rank.CLASH, 4, 5, 0, 0);

        order.release(6);

        assertEquals(List.of("3 clash 4 5", "5 timed-out 1 1 1", "5 timed-out 2 1 1", "5 gave-up 2 1"), lines.lines());
    }

    @Test
    void eventAtTheReleasedInstantIsHeldBack() {
        order.post(5, Rank.CLASH, 1, 2, 0, 0);

        order.release(5);
        int before = lines.lines().size();
        order.release(6);

        assertEquals(0, before);
        assertEquals(1, lines.lines().size());
    }

    @Test
    void plannedEventThatNoLongerHoldsIsDroppedAndLeavesNoMarkInTheDigest() {
        EventOrder other = new EventOrder(new TraceLines(), (rank, at, index, serial) -> true);
        order.post(5, Rank.SHOWN, 1, 13, 0, 0);
        order.post(6, Rank.SHOWN, 1, 14, 0, 0);
        other.post(6, Rank.SHOWN, 1, 14, 0, 0);

        order.release(9);
        other.release(9);

        assertEquals(List.of("6 shown 1 14"), lines.lines());
        assertEquals(other.digest(), order.digest());
    }

    @Test
    void digestFeelsEveryInteger() {
        long[] digests = new long[4];
        for (int i = 0; i < digests.length; i++) {
            EventOrder one = new EventOrder(new TraceLines(), (rank, at, index, serial) -> true);
            one.post(i == 1 ? 8 : 7, Rank.APPLIED, 1, i == 2 ? 3 : 2, 0, 0, 0, i == 3 ? 1 : 0, 0, 0);
            one.release(100);
            digests[i] = one.digest();
        }

        for (int i = 1; i < digests.length; i++) {
            assertNotEquals(digests[0], digests[i], "integer " + i);
        }
    }

    @Test
    void tenThousandEventsInAnyOrderComeOutSorted() {
        long seed = 4711;
        List<Long> times = new ArrayList<>();
        EventOrder many = new EventOrder(
                new TraceSink() {
                    @Override
                    public void stateSent(long atNanos) {
                        times.add(atNanos);
                    }
                },
                (rank, at, index, serial) -> true);

        for (int i = 0; i < 10_000; i++) {
            many.post((long) (Draws.draw(seed, i) * 1e9), Rank.STATE_SENT, 0, 0, 0, 0);
        }
        many.release(Long.MAX_VALUE);

        assertEquals(10_000, times.size());
        assertEquals(times.stream().sorted().toList(), times, "seed " + seed);
    }
}
