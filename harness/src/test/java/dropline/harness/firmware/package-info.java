/** Files that would be flashed, right and wrong. */
@NullMarked
package dropline.harness.firmware;

import org.jspecify.annotations.NullMarked;
