package dropline.harness.verdict;

import dropline.harness.measure.SegmentMeasures;
import java.util.List;

/**
 * The measures of one segment, and of those that run with it, run again with one of its nodes dead.
 *
 * @param node index into {@link dropline.bus.pit.Layout#nodes()} of the dead node
 * @param segment index of its segment
 * @param measures of the segments that could feel it, that one among them
 */
public record DeadNode(int node, int segment, List<SegmentMeasures> measures) {

    public DeadNode {
        measures = List.copyOf(measures);
    }

    /** The measures of the dead node's own segment. */
    SegmentMeasures own() {
        return measures.stream()
                .filter(measured -> measured.segment() == segment)
                .findFirst()
                .orElseThrow();
    }
}
