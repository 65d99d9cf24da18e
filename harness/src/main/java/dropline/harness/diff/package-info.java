/**
 * Compares two text traces and names the first event in which they differ. Start from
 * {@link dropline.harness.diff.TraceDiff}. Reads both as streams and judges nothing.
 */
@NullMarked
package dropline.harness.diff;

import org.jspecify.annotations.NullMarked;
