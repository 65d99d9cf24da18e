package dropline.harness.verdict;

import java.util.List;

/**
 * How many latencies fell where, for drawing.
 *
 * @param buckets side by side from the least upwards; at most 48
 */
public record LatencyHistogram(List<Bucket> buckets) {

    /**
     * One bar of the drawing.
     *
     * @param fromNanos least latency in it, ns
     * @param untilNanos the next bucket's least, ns
     * @param count how many
     */
    public record Bucket(long fromNanos, long untilNanos, long count) {
        public Bucket {
            if (fromNanos < 0 || untilNanos <= fromNanos || count < 0) {
                throw new IllegalArgumentException("a bucket must have a width and no negative count: from=" + fromNanos
                        + " until=" + untilNanos + " count=" + count);
            }
        }
    }

    public LatencyHistogram {
        buckets = List.copyOf(buckets);
    }
}
