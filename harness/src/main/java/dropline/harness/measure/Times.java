package dropline.harness.measure;

import org.HdrHistogram.Histogram;
import org.jspecify.annotations.Nullable;

/** A set of times, ns: percentiles to within 1%, count, sum, least and greatest exact. Times below 0 do not occur. */
public final class Times {
    private static final long LEAST_DISCERNIBLE_NANOS = 1000;
    private static final int DIGITS = 2;

    /** Made for the first time, since most of the many sets of a short run stay empty. */
    private @Nullable Histogram histogram;

    private long count;
    private long sumNanos;
    private long minNanos = Long.MAX_VALUE;
    private long maxNanos;
    private long lastNanos;

    private Histogram histogram() {
        Histogram made = histogram;
        if (made == null) {
            made = new Histogram(LEAST_DISCERNIBLE_NANOS, 4_000_000, DIGITS);
            made.setAutoResize(true);
            histogram = made;
        }
        return made;
    }

    public void add(long nanos) {
        histogram().recordValue(nanos);
        count++;
        sumNanos += nanos;
        minNanos = Math.min(minNanos, nanos);
        maxNanos = Math.max(maxNanos, nanos);
        lastNanos = nanos;
    }

    /** The one added last; 0 when empty. */
    long lastNanos() {
        return lastNanos;
    }

    /** Takes in another set as well. */
    public void addAll(Times other) {
        if (other.count > 0) {
            histogram().add(other.histogram());
        }
        count += other.count;
        sumNanos += other.sumNanos;
        minNanos = Math.min(minNanos, other.minNanos);
        maxNanos = Math.max(maxNanos, other.maxNanos);
    }

    public long count() {
        return count;
    }

    /** Rounded down; 0 when empty. */
    public long meanNanos() {
        return count == 0 ? 0 : sumNanos / count;
    }

    public long minNanos() {
        return count == 0 ? 0 : minNanos;
    }

    public long maxNanos() {
        return maxNanos;
    }

    /** The time that this share of all was no longer than, never above the exact maximum; 0 when empty. */
    public long percentileNanos(double percent) {
        return count == 0 ? 0 : Math.min(maxNanos, histogram().getValueAtPercentile(percent));
    }

    /**
     * How many lay at or above {@code fromNanos} and below {@code untilNanos}, to within the histogram's own buckets.
     */
    public long countBetween(long fromNanos, long untilNanos) {
        return count == 0 || fromNanos > maxNanos ? 0 : upTo(untilNanos) - upTo(fromNanos);
    }

    private long upTo(long nanos) {
        return nanos <= 0 ? 0 : histogram().getCountBetweenValues(0, Math.min(nanos, maxNanos + 1) - 1);
    }
}
