package dropline.bus.avr.device;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dropline.bus.avr.chip.Chip;
import dropline.bus.avr.chip.Microcontroller;
import dropline.bus.avr.chip.Pin;
import dropline.bus.avr.core.Flash;
import dropline.bus.avr.core.Poke;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Devices at pins, which are moved from outside of a program. From memory of the sheets of MAX7219 and WS2812B. */
final class PinDevicesTest {
    private static final int STAY = 0xCFFF;
    private static final int DDRB = 0x24;
    private static final int PORTB = 0x25;
    private static final int MICROSECOND = 16;

    private final Microcontroller chip = chip();
    private final List<Long> seen = new ArrayList<>();

    private static Microcontroller chip() {
        Flash flash = new Flash(0x4000);
        flash.set(0, STAY);
        Microcontroller made = new Microcontroller(Chip.ATMEGA328P, 16_000_000, flash, 0);
        made.cpu().skipLoops(false);
        made.reset(Microcontroller.POWER_ON);
        Poke.write(made.cpu(), DDRB, 0x3F);
        return made;
    }

    private void out(int levels) {
        Poke.write(chip.cpu(), PORTB, levels);
    }

    private void after(int cycles) {
        chip.cpu().run(chip.cpu().cycles() + cycles);
    }

    private void shift(int value) {
        for (int bit = 15; bit >= 0; bit--) {
            int data = value >> bit & 1;
            out(data);
            out(data | 2);
        }
        out(0);
        out(4);
        out(0);
    }

    /** Data at PB0, clock at PB1, load at PB2. */
    @Test
    void aDigitIsShownWhenLoadRises() {
        Device.tie(
                Device.Kind.DIGIT_DRIVER,
                0,
                List.of(new Pin('B', 0), new Pin('B', 1), new Pin('B', 2)),
                chip,
                (levels, cycle) -> seen.add(cycle));
        shift(0x0C01);
        assertEquals(1, seen.size(), "out of its shutdown");
        shift(0x0105);
        assertEquals(2, seen.size());
        shift(0x0105);
        shift(0x0007);
        assertEquals(2, seen.size(), "the same digit, and no operation");
        shift(0xF206);
        assertEquals(3, seen.size(), "the upper four bits do not count");
    }

    private void pulse(int highCycles) {
        out(1);
        after(highCycles);
        out(0);
        after(8);
    }

    private void colours(int bits, int value) {
        for (int bit = bits - 1; bit >= 0; bit--) {
            pulse((value >> bit & 1) == 1 ? 13 : 6);
        }
    }

    /** 0.4 us are 6 cycles, 0.8 us are 13; they show it when the line has been low for 50 us. */
    @Test
    void ledsShowWhatTheyWereSentAfterFiftyMicroseconds() {
        Device.tie(Device.Kind.ADDRESSABLE_LEDS, 0, List.of(new Pin('B', 0)), chip, (levels, cycle) -> seen.add(cycle));
        colours(24, 0x200010);
        after(45 * MICROSECOND);
        assertEquals(0, seen.size());
        after(10 * MICROSECOND);
        assertEquals(1, seen.size());

        colours(24, 0x200010);
        after(60 * MICROSECOND);
        assertEquals(1, seen.size(), "the same colour");
        colours(24, 0x200011);
        after(60 * MICROSECOND);
        assertEquals(2, seen.size(), "one bit is another");
    }
}
