/** Plans of pits small enough to see through. */
@NullMarked
package dropline.harness.plan;

import org.jspecify.annotations.NullMarked;
