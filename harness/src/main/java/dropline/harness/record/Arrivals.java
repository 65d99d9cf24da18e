package dropline.harness.record;

import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;

/**
 * What has come in and was not yet looked at, between the thread of the socket and that of the recorder. It has a
 * limit: a message beyond it is dropped and counted, for the simulator must never be made to wait.
 */
final class Arrivals {
    /** Some seconds of the busiest stream that is expected: 5,000 messages a second of 2.5 kB. */
    static final long USUAL_BYTES = 64L << 20;

    /** What a message takes besides its bytes, roughly. */
    private static final int OVERHEAD = 80;

    private static final byte[] NOTHING = {};

    private final long mostBytes;
    private final LongSupplier clockNanos;
    private final BlockingQueue<Arrival> waiting = new LinkedBlockingQueue<>();
    private final AtomicLong waitingBytes = new AtomicLong();
    private final AtomicLong received = new AtomicLong();
    private final AtomicLong dropped = new AtomicLong();

    Arrivals(long mostBytes, LongSupplier clockNanos) {
        this.mostBytes = mostBytes;
        this.clockNanos = clockNanos;
    }

    void message(byte[] bytes) {
        received.incrementAndGet();
        if (waitingBytes.get() + bytes.length + OVERHEAD > mostBytes) {
            dropped.incrementAndGet();
            return;
        }
        waitingBytes.addAndGet(bytes.length + OVERHEAD);
        add(Arrival.Kind.MESSAGE, bytes, "");
    }

    /** A message that did not come whole. */
    void broken(String why) {
        received.incrementAndGet();
        add(Arrival.Kind.BROKEN, NOTHING, why);
    }

    void note(String what) {
        add(Arrival.Kind.NOTE, NOTHING, what);
    }

    void lost(String what) {
        add(Arrival.Kind.LOST, NOTHING, what);
    }

    void end(String why) {
        add(Arrival.Kind.END, NOTHING, why);
    }

    private void add(Arrival.Kind kind, byte[] bytes, String text) {
        if (!waiting.offer(new Arrival(kind, clockNanos.getAsLong(), bytes, text))) {
            throw new AssertionError("the queue itself has no limit");
        }
    }

    /** The next arrival, waited for if need be; null if none comes in time. */
    @Nullable
    Arrival next(long waitNanos) throws InterruptedException {
        Arrival next = waiting.poll(waitNanos, TimeUnit.NANOSECONDS);
        if (next != null && next.kind() == Arrival.Kind.MESSAGE) {
            waitingBytes.addAndGet(-next.bytes().length - OVERHEAD);
        }
        return next;
    }

    /** Messages that came in, the dropped and the broken among them. */
    long received() {
        return received.get();
    }

    /** Messages that came in and found no room. */
    long dropped() {
        return dropped.get();
    }
}
