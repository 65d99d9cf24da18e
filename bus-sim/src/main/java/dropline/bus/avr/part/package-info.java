/**
 * The peripherals of an 8-bit AVR, each after its chapter in the data sheets (ATmega48A/PA/88A/PA/168A/PA/328/P,
 * DS40002061; ATmega640/1280/1281/2560/2561, 2549; ATmega16U4/32U4, 7766). Each stands alone on the processor's core.
 */
@NullMarked
package dropline.bus.avr.part;

import org.jspecify.annotations.NullMarked;
