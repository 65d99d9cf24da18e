/** Bounds against what can be worked out by hand. */
@NullMarked
package dropline.bus.bound;

import org.jspecify.annotations.NullMarked;
