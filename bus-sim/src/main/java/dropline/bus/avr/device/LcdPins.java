package dropline.bus.avr.device;

import dropline.bus.avr.chip.Microcontroller;
import dropline.bus.avr.chip.Pin;
import java.util.List;

/** A character display at six pins: its register line, its enable line, and the upper four of its data lines. */
final class LcdPins {
    private static final int REGISTER = 0;
    private static final int ENABLE = 1;
    private static final int FIRST_DATA = 2;

    private final List<Pin> pins;
    private final Microcontroller chip;

    LcdPins(List<Pin> pins, Microcontroller chip, CharacterLcd display) {
        this.pins = pins;
        this.chip = chip;
        Pin enable = pins.get(ENABLE);
        chip.port(enable.port()).watch((levels, changed, cycle) -> {
            if (falls(levels, changed, enable)) {
                display.taken(level(REGISTER) == 1, data(), cycle);
            }
        });
    }

    private static boolean falls(int levels, int changed, Pin pin) {
        return (changed >> pin.bit() & 1) == 1 && (levels >> pin.bit() & 1) == 0;
    }

    private int level(int number) {
        Pin pin = pins.get(number);
        return chip.port(pin.port()).level(pin.bit());
    }

    private int data() {
        int data = 0;
        for (int i = 0; i < 4; i++) {
            data |= level(FIRST_DATA + i) << i;
        }
        return data;
    }
}
