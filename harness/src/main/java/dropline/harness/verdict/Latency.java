package dropline.harness.verdict;

/**
 * A set of times, ns: the percentiles to within 1%, count, mean and maximum exact. All 0 when there were none.
 *
 * @param count how many
 * @param meanNanos mean
 * @param p50Nanos half were no longer
 * @param p90Nanos 90 of 100 were no longer
 * @param p99Nanos 99 of 100 were no longer
 * @param maxNanos the longest
 */
public record Latency(long count, long meanNanos, long p50Nanos, long p90Nanos, long p99Nanos, long maxNanos) {

    /** No times at all. */
    public static final Latency NONE = new Latency(0, 0, 0, 0, 0, 0);

    public Latency {
        if (count < 0 || p50Nanos > p90Nanos || p90Nanos > p99Nanos || p99Nanos > maxNanos) {
            throw new IllegalArgumentException("percentiles must rise to the maximum: count=" + count + " p50="
                    + p50Nanos + " p90=" + p90Nanos + " p99=" + p99Nanos + " max=" + maxNanos);
        }
    }
}
