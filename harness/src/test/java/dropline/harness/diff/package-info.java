/** Holds the comparison of traces to small traces written by hand. */
@NullMarked
package dropline.harness.diff;

import org.jspecify.annotations.NullMarked;
