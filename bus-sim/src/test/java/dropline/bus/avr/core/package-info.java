/** The processor against its manual. */
@NullMarked
package dropline.bus.avr.core;

import org.jspecify.annotations.NullMarked;
