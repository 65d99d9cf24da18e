/** Peripherals against the text of their data sheets. */
@NullMarked
package dropline.bus.avr.part;

import org.jspecify.annotations.NullMarked;
