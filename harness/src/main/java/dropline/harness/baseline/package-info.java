/**
 * The accepted runs of a suite: what they came to, seed by seed, how later runs differ from them, and which change of
 * the pit is behind that. Start from {@link dropline.harness.baseline.Accepted} and
 * {@link dropline.harness.baseline.Comparison}. Prints nothing.
 */
@NullMarked
package dropline.harness.baseline;

import org.jspecify.annotations.NullMarked;
