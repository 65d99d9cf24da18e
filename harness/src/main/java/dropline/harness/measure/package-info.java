/**
 * Folds a segment's trace into figures as it comes, in memory that does not grow with the run. Start from
 * {@link dropline.harness.measure.SegmentMeasures}. Reads the trace and the pit's description, nothing else; judges
 * nothing.
 */
@NullMarked
package dropline.harness.measure;

import org.jspecify.annotations.NullMarked;
