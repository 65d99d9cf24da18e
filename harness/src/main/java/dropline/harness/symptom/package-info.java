/**
 * Symptoms first: what a builder sees, what is likely behind it, and the next test. Start from
 * {@link dropline.harness.symptom.Symptoms}.
 */
@NullMarked
package dropline.harness.symptom;

import org.jspecify.annotations.NullMarked;
