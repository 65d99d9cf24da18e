/** How a sizing is told: start from {@link dropline.harness.sized.SizeText}. Sizes nothing itself. */
@NullMarked
package dropline.harness.sized;

import org.jspecify.annotations.NullMarked;
