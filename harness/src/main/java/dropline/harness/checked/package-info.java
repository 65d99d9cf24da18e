/**
 * What a check of a suite found, as text, as a page and for build servers: start from
 * {@link dropline.harness.checked.SuiteText}. Judges nothing itself.
 */
@NullMarked
package dropline.harness.checked;

import org.jspecify.annotations.NullMarked;
