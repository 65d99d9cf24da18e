package dropline.harness.link;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import java.io.IOException;
import java.util.ArrayDeque;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

final class LoopBackTest {
    private static final long MILLI = 1_000_000L;

    /** What is sent comes back after a time that grows by a millisecond from trip to trip, or never. */
    private static final class LateLink implements Link {
        private final ArrayDeque<Arrival> back = new ArrayDeque<>();
        private final long leastNanos;
        private final boolean isClosed;
        private long now;
        private int trips;

        LateLink(long leastNanos, boolean isClosed) {
            this.leastNanos = leastNanos;
            this.isClosed = isClosed;
        }

        @Override
        public long now() {
            return now;
        }

        @Override
        public long send(byte[] bytes, int offset, int length) {
            if (isClosed) {
                long wire = length * 10L * 1_000_000_000L / 100_000;
                back.add(new Arrival.Received(
                        now + wire + leastNanos + trips++ % 10 * MILLI, Bytes.copyOf(bytes, offset, length)));
            }
            return now;
        }

        @Override
        public @Nullable Arrival await(long deadlineNanos) {
            Arrival next = back.peek();
            if (next == null || next.atNanos() > deadlineNanos) {
                now = Math.max(now, deadlineNanos);
                return null;
            }
            now = Math.max(now, next.atNanos());
            return back.poll();
        }

        @Override
        public boolean isExact() {
            return false;
        }

        @Override
        public boolean isOnAWire() {
            return true;
        }

        @Override
        public String where() {
            return "a late link";
        }

        @Override
        public void close() {
            // nothing is held open
        }
    }

    @Test
    void whatIsAddedIsTheRoundTripLessTheTimeOnTheWire() throws IOException {
        LoopBack loop = new LoopBack(new LateLink(MILLI, true), 100_000, CharacterFormat.EIGHT_N_ONE);

        loop.measure(1_000);

        assertEquals(1_000, loop.count());
        assertEquals(MILLI, loop.leastNanos(), MILLI / 500.0);
        assertEquals(5 * MILLI, loop.atMostNanos(50), MILLI / 100.0);
        assertEquals(10 * MILLI, loop.atMostNanos(100), MILLI / 50.0);
        assertEquals(LoopBack.Timer.SHORT, loop.timer());
    }

    @Test
    void aLatencyTimerOfSixteenMillisecondsIsSeen() throws IOException {
        LoopBack loop = new LoopBack(new LateLink(9 * MILLI, true), 100_000, CharacterFormat.EIGHT_N_ONE);

        loop.measure(100);

        assertEquals(LoopBack.Timer.LONG, loop.timer());
    }

    @Test
    void anOpenLoopIsSeen() throws IOException {
        assertFalse(new LoopBack(new LateLink(0, false), 100_000, CharacterFormat.EIGHT_N_ONE).isClosed());
        assertTrue(new LoopBack(new LateLink(0, true), 100_000, CharacterFormat.EIGHT_N_ONE).isClosed());
    }
}
