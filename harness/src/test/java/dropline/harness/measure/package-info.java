/** Holds the measures to traces fed by hand and to closed forms. */
@NullMarked
package dropline.harness.measure;

import org.jspecify.annotations.NullMarked;
