package dropline.harness.verdict;

import dropline.harness.measure.SegmentMeasures;

/**
 * The measures of one segment, run again with one of its nodes dead.
 *
 * @param node index into {@link dropline.bus.pit.Layout#nodes()} of the dead node
 * @param measures of that node's segment
 */
public record DeadNode(int node, SegmentMeasures measures) {}
