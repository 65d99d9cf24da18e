/**
 * An 8-bit AVR's processor: its memories, its instructions with their cycles, its interrupts. Start from
 * {@link dropline.bus.avr.core.Cpu}. Knows no peripheral and no bus.
 */
@NullMarked
package dropline.bus.avr.core;

import org.jspecify.annotations.NullMarked;
