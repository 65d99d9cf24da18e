package dropline.harness.replay;

import dropline.harness.finding.Finding;
import dropline.harness.measure.SegmentMeasures;
import dropline.harness.verdict.DeadNode;
import java.util.List;

/**
 * What a replay measured.
 *
 * @param durationNanos how long the run was, ns
 * @param digest of the trace: the segments' digests, combined in their order
 * @param segments measures of each segment, in the order of the pit
 * @param failures the same with one node dead; empty unless asked for
 * @param findings what the trace says is wrong
 * @param losses what of the recording was left out, a sentence each
 */
public record Replayed(
        long durationNanos,
        long digest,
        List<SegmentMeasures> segments,
        List<DeadNode> failures,
        List<Finding> findings,
        List<String> losses) {

    public Replayed {
        segments = List.copyOf(segments);
        failures = List.copyOf(failures);
        findings = List.copyOf(findings);
        losses = List.copyOf(losses);
    }
}
