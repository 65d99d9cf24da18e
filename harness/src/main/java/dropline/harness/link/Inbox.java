package dropline.harness.link;

import dropline.protocol.Bytes;
import java.util.ArrayDeque;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;

/**
 * What a link's own thread has received, for the one that awaits it. Holds so much at most: what comes while it is full
 * is let go and told of.
 */
final class Inbox {
    /** Bytes; at 1 Mbaud ten seconds of them. */
    private static final long MOST = 1_000_000;

    /** Shorter than this a wait is spun, since a system wakes its threads late, ns. */
    private static final long SPIN_NANOS = isWindows() ? 2_000_000 : 80_000;

    private final LongSupplier clock;
    private final ReentrantLock lock = new ReentrantLock();
    private final Condition came = lock.newCondition();
    private final ArrayDeque<Arrival> arrivals = new ArrayDeque<>();
    private volatile boolean isEmpty = true;
    private long held;
    private long overrun;

    /** @param clock the link's, ns */
    Inbox(LongSupplier clock) {
        this.clock = clock;
    }

    private static boolean isWindows() {
        return System.getProperty("os.name", "").startsWith("Windows");
    }

    /** Bytes came. */
    void received(byte[] bytes, int length) {
        long at = clock.getAsLong();
        lock.lock();
        try {
            if (held + length > MOST) {
                overrun += length;
                return;
            }
            held += length;
            put(new Arrival.Received(at, Bytes.copyOf(bytes, 0, length)));
        } finally {
            lock.unlock();
        }
    }

    /** The link broke off. */
    void lost(String why) {
        tell(new Arrival.Lost(clock.getAsLong(), why));
    }

    /** It is there again. */
    void back() {
        tell(new Arrival.Back(clock.getAsLong()));
    }

    private void tell(Arrival arrival) {
        lock.lock();
        try {
            put(arrival);
        } finally {
            lock.unlock();
        }
    }

    private void put(Arrival arrival) {
        arrivals.add(arrival);
        isEmpty = false;
        came.signalAll();
    }

    /** The next arrival, or null at the deadline. */
    @Nullable
    Arrival await(long deadlineNanos) {
        Arrival arrival = poll();
        long left = deadlineNanos - clock.getAsLong();
        while (arrival == null && left > 0) {
            if (left > SPIN_NANOS) {
                park(left - SPIN_NANOS);
            } else if (isEmpty) {
                Thread.onSpinWait();
            }
            arrival = isEmpty ? null : poll();
            left = deadlineNanos - clock.getAsLong();
        }
        return arrival;
    }

    private @Nullable Arrival poll() {
        lock.lock();
        try {
            Arrival arrival = arrivals.poll();
            if (arrival instanceof Arrival.Received received) {
                held -= received.bytes().length();
            }
            if (arrival == null && overrun > 0) {
                arrival = new Arrival.Overrun(clock.getAsLong(), overrun);
                overrun = 0;
            }
            isEmpty = arrivals.isEmpty() && overrun == 0;
            return arrival;
        } finally {
            lock.unlock();
        }
    }

    private void park(long nanos) {
        lock.lock();
        try {
            long left = nanos;
            while (arrivals.isEmpty() && left > 0) {
                left = came.awaitNanos(left);
            }
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        } finally {
            lock.unlock();
        }
    }
}
