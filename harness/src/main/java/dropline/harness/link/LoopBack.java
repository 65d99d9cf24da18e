package dropline.harness.link;

import dropline.bus.clock.UartClock;
import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import java.io.IOException;
import org.HdrHistogram.Histogram;

/**
 * Measures what an adapter and its computer add: what is sent comes back over a loop, and whatever it takes longer than
 * the bytes take on the wire is theirs.
 */
public final class LoopBack {
    /** Longer than any adapter's latency timer, ns. */
    private static final long PATIENCE_NANOS = 300_000_000L;

    private static final long LONGEST_NANOS = 10_000_000_000L;
    private static final int[] PATTERN = {0x55, 0x3C, 0xA5, 0x0F};

    /** How an adapter hands bytes on. */
    public enum Timer {
        /** At once, or nearly. */
        NONE,
        /** Every millisecond or two. */
        SHORT,
        /** Some sixteen milliseconds, as many adapters come. */
        LONG
    }

    private final Link link;
    private final long wireNanos;
    private final Histogram added = new Histogram(LONGEST_NANOS, 3);
    private int lost;

    /** @param baud bits a second */
    public LoopBack(Link link, int baud, CharacterFormat format) {
        this.link = link;
        wireNanos = link.isOnAWire() ? UartClock.exact(baud).charsNanos(format, PATTERN.length) : 0;
    }

    /** Whether what is sent comes back, once. */
    public boolean isClosed() throws IOException {
        return roundTrip() >= 0;
    }

    /** Sends so many times. */
    public void measure(int times) throws IOException {
        for (int i = 0; i < times; i++) {
            long took = roundTrip();
            if (took < 0) {
                lost++;
            } else {
                added.recordValue(Math.min(LONGEST_NANOS, Math.max(0, took - wireNanos)));
            }
        }
    }

    /** From sending to having all of it back, ns; -1 if it did not come. */
    private long roundTrip() throws IOException {
        byte[] sent = Bytes.of(PATTERN).toArray();
        while (link.await(link.now()) != null) {
            // what came before is of no account
        }
        long at = link.send(sent, 0, sent.length);
        int back = 0;
        long deadline = at + PATIENCE_NANOS;
        Arrival arrival = link.await(deadline);
        while (arrival != null) {
            if (arrival instanceof Arrival.Received received) {
                for (int i = 0; i < received.bytes().length(); i++) {
                    if (back >= PATTERN.length || received.bytes().at(i) != PATTERN[back]) {
                        return -1;
                    }
                    back++;
                }
                if (back == PATTERN.length) {
                    return received.atNanos() - at;
                }
            }
            arrival = link.await(deadline);
        }
        return -1;
    }

    /** How many came back. */
    public long count() {
        return added.getTotalCount();
    }

    /** How many did not. */
    public int lost() {
        return lost;
    }

    /** What was added at least, ns. */
    public long leastNanos() {
        return added.getMinValue();
    }

    /** What was added at most in this share of the trips, ns. */
    public long atMostNanos(double percent) {
        return added.getValueAtPercentile(percent);
    }

    /** The latency timer that this looks like. */
    public Timer timer() {
        long usual = atMostNanos(50);
        if (usual > 6_000_000L) {
            return Timer.LONG;
        }
        return usual > 700_000L ? Timer.SHORT : Timer.NONE;
    }
}
