/** Holds the wiring sheet and the cards to what belongs on a pair. */
@NullMarked
package dropline.harness.wiring;

import org.jspecify.annotations.NullMarked;
