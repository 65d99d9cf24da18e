package dropline.bus.avr.device;

import dropline.bus.avr.chip.Microcontroller;
import dropline.bus.avr.chip.Pin;
import java.util.List;

/**
 * A driver of eight digits (Maxim, MAX7219/MAX7221, 19-4452: "Serial-Addressing Modes", "Register Address Map"): what
 * its data line says at each rise of its clock is shifted in, and the last sixteen bits count at the rise of its load
 * line. The bytes of the SPI come in while load is low, without its pins being moved. One driver: what is shifted out
 * for another behind it is lost.
 */
final class DigitDriver {
    private static final int NO_OPERATION = 0;
    private static final int REGISTERS = 16;

    private final Device.Seen seen;
    private final int[] registers = new int[REGISTERS];
    private int shifted;

    /** @param pins data, clock, load */
    DigitDriver(List<Pin> pins, Microcontroller chip, Device.Seen seen) {
        this.seen = seen;
        Pin data = pins.get(0);
        Pin clock = pins.get(1);
        Pin load = pins.get(2);
        chip.port(clock.port()).watch((levels, changed, cycle) -> {
            if ((changed & levels & 1 << clock.bit()) != 0) {
                shifted = shifted << 1 | chip.port(data.port()).level(data.bit());
            }
        });
        chip.spi().connect((value, cycle) -> {
            if (chip.port(load.port()).level(load.bit()) == 0) {
                shifted = shifted << 8 | value;
            }
            return 0xFF;
        });
        chip.port(load.port()).watch((levels, changed, cycle) -> {
            if ((changed & levels & 1 << load.bit()) != 0) {
                loaded(cycle);
            }
        });
    }

    private void loaded(long cycle) {
        int register = shifted >> 8 & REGISTERS - 1;
        int value = shifted & 0xFF;
        if (register != NO_OPERATION && registers[register] != value) {
            registers[register] = value;
            seen.changed(0, cycle);
        }
    }
}
