/** Chips against their sheets and their tools' headers. */
@NullMarked
package dropline.bus.avr.chip;

import org.jspecify.annotations.NullMarked;
