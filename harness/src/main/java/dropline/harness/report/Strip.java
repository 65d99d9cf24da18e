package dropline.harness.report;

import dropline.harness.verdict.Latency;

/**
 * Latencies against their limit, along a strip 200 wide on which the limit is at 100; beyond twice the limit it is cut.
 *
 * @param half where half of them ended
 * @param most where 99 of 100 ended
 * @param slowest where the slowest ended
 * @param cut whether the slowest lies beyond the strip
 */
public record Strip(double half, double most, double slowest, boolean cut) {
    /** The strip for these latencies; the limit in ns. */
    public static Strip of(Latency latency, long limitNanos) {
        return new Strip(
                at(latency.p50Nanos(), limitNanos),
                at(latency.p99Nanos(), limitNanos),
                at(latency.maxNanos(), limitNanos),
                latency.maxNanos() > 2 * limitNanos);
    }

    /** Width of the bar from half to most, never invisible. */
    public double width() {
        return Math.max(1, most - half);
    }

    private static double at(long nanos, long limitNanos) {
        return Math.min(197, Math.round(1000.0 * nanos / limitNanos) / 10.0);
    }
}
