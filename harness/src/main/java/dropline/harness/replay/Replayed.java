package dropline.harness.replay;

import dropline.harness.measure.SegmentMeasures;
import java.util.List;

/**
 * What a replay measured.
 *
 * @param durationNanos how long the run was, ns
 * @param digest of the trace: the segments' digests, combined in their order
 * @param segments measures of each segment, in the order of the pit
 * @param failures the same with one node dead; empty unless asked for
 * @param losses what of the recording was left out, a sentence each
 */
public record Replayed(
        long durationNanos,
        long digest,
        List<SegmentMeasures> segments,
        List<NodeDead> failures,
        List<String> losses) {

    /**
     * A run of one segment with one of its nodes dead; the other segments do not feel it.
     *
     * @param node index into {@link dropline.bus.pit.Layout#nodes()}
     * @param measures of the node's segment
     */
    public record NodeDead(int node, SegmentMeasures measures) {}

    public Replayed {
        segments = List.copyOf(segments);
        failures = List.copyOf(failures);
        losses = List.copyOf(losses);
    }

    /** The digest as it is printed: 16 hexadecimal digits. */
    public String digestText() {
        String digits = Long.toHexString(digest);
        return "0".repeat(16 - digits.length()) + digits;
    }
}
