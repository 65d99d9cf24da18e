package dropline.harness.verdict;

import java.util.List;

/**
 * One segment.
 *
 * @param segment its name
 * @param baud bits a second
 * @param format character format, for people: {@code 8N1}
 * @param nodes how many nodes it has
 * @param utilisation share of the time in which a frame was on the wire, 0..1
 * @param pollCycle full rounds of polls, from start to start
 * @param pollCycleAtWorst what no poll cycle exceeds while nothing is broken
 * @param pollCycleMinNanos the shortest, ns
 * @param pollCycleOverTime for drawing, at most 300 points
 * @param asked transactions: requests with all their retries
 * @param answered transactions that ended with a good reply
 * @param retried further tries
 * @param timedOut tries without a good reply
 * @param gaveUp transactions given up
 * @param backOffs times a node was left alone for a while
 * @param clashes times two transmissions touched
 * @param overruns frames lost in a node's buffers
 * @param stateFrames frames that carried state
 * @param replyGap last stop bit of the request to first start bit of the reply
 * @param nodeGaps the same of each node, in the order of the pit file
 */
public record SegmentResult(
        String segment,
        int baud,
        String format,
        int nodes,
        double utilisation,
        Latency pollCycle,
        AtWorst pollCycleAtWorst,
        long pollCycleMinNanos,
        List<CyclePoint> pollCycleOverTime,
        long asked,
        long answered,
        long retried,
        long timedOut,
        long gaveUp,
        long backOffs,
        long clashes,
        long overruns,
        long stateFrames,
        ReplyGap replyGap,
        List<NodeGap> nodeGaps) {

    /**
     * Poll cycles begun in one stretch of the recording.
     *
     * @param atNanos start of the stretch, ns into the recording
     */
    public record CyclePoint(long atNanos, long meanNanos, long maxNanos) {}

    /** Reply gaps, ns; may be negative: a reply too soon. All 0 when there was no reply. */
    public record ReplyGap(long minNanos, long meanNanos, long maxNanos) {}

    /**
     * Reply gaps of one node.
     *
     * @param node its name
     * @param answered good replies
     * @param meanNanos their mean, ns; 0 without a reply
     */
    public record NodeGap(String node, long answered, long meanNanos) {}

    public SegmentResult {
        nodeGaps = List.copyOf(nodeGaps);
        pollCycleOverTime = List.copyOf(pollCycleOverTime);
    }
}
