/**
 * Whole chips: which parts a chip has and where. Start from {@link dropline.bus.avr.chip.Chip} and
 * {@link dropline.bus.avr.chip.Microcontroller}. Knows no bus.
 */
@NullMarked
package dropline.bus.avr.chip;

import org.jspecify.annotations.NullMarked;
