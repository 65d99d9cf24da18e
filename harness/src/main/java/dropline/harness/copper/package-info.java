/**
 * The rules of copper in words: start from {@link dropline.harness.copper.CopperText}. Judges nothing itself;
 * {@code dropline.bus.copper} does.
 */
@NullMarked
package dropline.harness.copper;

import org.jspecify.annotations.NullMarked;
