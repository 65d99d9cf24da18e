@NullMarked
package dropline.bus.avr.device;

import org.jspecify.annotations.NullMarked;
