/**
 * What hangs on a board's pins and buses, as far as its program can tell, and when what it shows becomes another. Start
 * from {@link dropline.bus.avr.device.Device}.
 */
@NullMarked
package dropline.bus.avr.device;

import org.jspecify.annotations.NullMarked;
