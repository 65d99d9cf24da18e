package dropline.bus.avr.device;

import dropline.bus.avr.chip.Microcontroller;
import dropline.bus.avr.chip.Pin;
import java.util.List;

/** Something that a board's program shows with. */
public final class Device {
    private Device() {}

    /** What there is. */
    public enum Kind {
        /** A monochrome dot display with an SSD1306 or one like it, at the two-wire bus. */
        OLED(0, 0x3C),
        /** A character display with an HD44780 or one like it, by four data lines. */
        CHARACTER_LCD(6, 0),
        /** The same behind a port expander (PCF8574) at the two-wire bus. */
        CHARACTER_LCD_EXPANDER(0, 0x27),
        /** Eight outputs at the two-wire bus (PCF8574). */
        PORT_EXPANDER(0, 0x20),
        /** A driver of eight digits or rows (MAX7219), at the SPI or at pins that the program moves. */
        DIGIT_DRIVER(3, 0),
        /** LEDs with a controller each (WS2812B), one behind the other. */
        ADDRESSABLE_LEDS(1, 0);

        private final int pins;
        private final int usualAddress;

        Kind(int pins, int usualAddress) {
            this.pins = pins;
            this.usualAddress = usualAddress;
        }

        /** How many pins it hangs on. */
        public int pins() {
            return pins;
        }

        /** The address that most of its sort have on the two-wire bus; 0 for what is not on it. */
        public int usualAddress() {
            return usualAddress;
        }
    }

    /** Hears of what it shows. */
    @FunctionalInterface
    public interface Seen {
        /**
         * What it shows is another than before.
         *
         * @param levels of a port expander's outputs; 0 of anything else
         */
        void changed(int levels, long cycle);
    }

    /**
     * Ties one to a chip.
     *
     * @param address on the two-wire bus, where it is on that
     * @param pins as many as its kind has
     */
    public static void tie(Kind kind, int address, List<Pin> pins, Microcontroller chip, Seen seen) {
        switch (kind) {
            case OLED -> chip.twi().connect(new Oled(address, seen));
            case CHARACTER_LCD -> new LcdPins(pins, chip, new CharacterLcd(seen));
            case CHARACTER_LCD_EXPANDER -> chip.twi().connect(new LcdExpander(address, new CharacterLcd(seen)));
            case PORT_EXPANDER -> chip.twi().connect(new PortExpander(address, seen));
            case DIGIT_DRIVER -> new DigitDriver(pins, chip, seen);
            case ADDRESSABLE_LEDS -> new AddressableLeds(pins.get(0), chip, seen);
        }
    }
}
