/** Holds the drawing to what was played by hand. */
@NullMarked
package dropline.harness.timeline;

import org.jspecify.annotations.NullMarked;
