/** Holds the description of a pit to what it says of itself. */
@NullMarked
package dropline.bus.pit;

import org.jspecify.annotations.NullMarked;
