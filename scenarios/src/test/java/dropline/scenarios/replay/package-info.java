/**
 * The shipped pits, end to end: from pit file and recording to verdict and report. Start from
 * {@link dropline.scenarios.replay.Shipped}. Real simulator, real files, no doubles.
 */
@NullMarked
package dropline.scenarios.replay;

import org.jspecify.annotations.NullMarked;
