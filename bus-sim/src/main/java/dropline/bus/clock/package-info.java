/**
 * Clocks that count ticks, and the bit times made from them. Start from {@link dropline.bus.clock.UartClock}. Never
 * reads the host's clock.
 */
@NullMarked
package dropline.bus.clock;

import org.jspecify.annotations.NullMarked;
