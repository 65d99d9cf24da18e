package dropline.bus.avr.part;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.avr.core.Poke;
import dropline.bus.avr.core.StoppedException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Pins, watchdog, EEPROM, converter, SPI and TWI, from the text of DS40002061. */
final class OthersTest {
    private static final int PINB = 0x23;
    private static final int DDRB = 0x24;
    private static final int PORTB = 0x25;
    private static final int MCUSR = 0x54;
    private static final int WDTCSR = 0x60;

    private final IdleChip chip = new IdleChip();

    @Test
    void aOneWrittenToPinTogglesPort() {
        chip.write(DDRB, 0x0F);
        chip.write(PORTB, 0x05);
        chip.write(PINB, 0x0F);

        assertEquals(0x0A, chip.read(PORTB));
    }

    @Test
    void aPinIsReadThroughItsSynchronizerOneCycleLater() {
        chip.write(DDRB, 1);
        chip.write(PORTB, 1);
        assertEquals(0, chip.read(PINB) & 1, "as by the very next instruction");

        chip.runTo(chip.cpu.cycles() + 2);
        assertEquals(1, chip.read(PINB) & 1);
    }

    @Test
    void anInputRestsHighOnlyWithItsPullUp() {
        chip.runTo(10);
        assertEquals(0, chip.read(PINB) & 2);
        chip.write(PORTB, 2);
        chip.runTo(20);
        assertEquals(2, chip.read(PINB) & 2);
        chip.chip.port('B').hold(1, 0, chip.cpu.cycles());
        chip.runTo(30);
        assertEquals(0, chip.read(PINB) & 2);
    }

    @Test
    void theWatchdogBitesAfterSixteenMillisecondsAndSaysSo() {
        chip.write(WDTCSR, 0x18);
        chip.write(WDTCSR, 0x08);

        chip.runTo(255_900);
        assertEquals(0, chip.chip.bites());
        chip.runTo(256_200);

        assertEquals(1, chip.chip.bites());
        assertEquals(8, chip.read(MCUSR) & 8, "WDRF");
        chip.runTo(2 * 256_300);
        assertEquals(2, chip.chip.bites(), "it goes on until WDRF is cleared");
    }

    @Test
    void theWatchdogsTimeChangesOnlyWithinFourCyclesOfWdce() {
        chip.write(WDTCSR, 0x18);
        chip.runTo(10);
        chip.write(WDTCSR, 0x0F);

        assertEquals(0x08, chip.read(WDTCSR) & 0x0F);
    }

    @Test
    void theEepromIsWrittenIn3300Microseconds() {
        chip.write(0x41, 7);
        chip.write(0x40, 0x5A);
        chip.write(0x3F, 4);
        chip.write(0x3F, 2);
        long begun = chip.cpu.cycles();

        chip.runTo(begun + 52_000);
        assertEquals(2, chip.read(0x3F) & 2);
        chip.runTo(begun + 53_000);
        assertEquals(0, chip.read(0x3F) & 2);
        chip.write(0x40, 0);
        chip.write(0x3F, 1);
        assertEquals(0x5A, chip.read(0x40));
    }

    @Test
    void withoutItsMasterBitNothingIsWritten() {
        chip.write(0x40, 0x5A);
        chip.write(0x3F, 2);
        assertEquals(0, chip.read(0x3F) & 2);
    }

    @Test
    void theFirstConversionTakes25OfTheConvertersCyclesTheNext13() {
        chip.chip.adc().inputs(channel -> 100 * channel + 23);
        chip.write(0x7C, 3);
        chip.write(0x7A, 0xC7);
        long begun = chip.cpu.cycles();
        chip.runTo(begun + 25 * 128 - 4);
        assertEquals(0x40, chip.read(0x7A) & 0x40);
        chip.runTo(begun + 25 * 128 + 4);
        assertEquals(0, chip.read(0x7A) & 0x40);
        assertEquals(323, chip.read(0x78) | chip.read(0x79) << 8);

        begun = chip.cpu.cycles();
        chip.write(0x7A, 0xC7);
        chip.runTo(begun + 13 * 128 + 4);
        assertEquals(0, chip.read(0x7A) & 0x40);
    }

    @Test
    void spiSendsEightBitsAtItsRateAndBringsOneBack() {
        List<Integer> seen = new ArrayList<>();
        chip.chip.spi().connect((value, cycle) -> {
            seen.add(value);
            return 0xA5;
        });
        chip.write(0x4C, 0x50);
        chip.write(0x4E, 0x3C);
        long begun = chip.cpu.cycles();
        chip.runTo(begun + 31);
        assertEquals(0, chip.read(0x4D) & 0x80);
        chip.runTo(begun + 34);

        assertEquals(0x80, chip.read(0x4D) & 0x80);
        assertEquals(0xA5, chip.read(0x4E));
        assertEquals(List.of(0x3C), seen);
        assertEquals(0, chip.read(0x4D) & 0x80, "cleared by reading SPSR, then SPDR");
    }

    @Test
    void twiSaysThatNobodyAcknowledgesAnAddress() {
        chip.write(0xB8, 72);
        chip.write(0xBC, 0xA4);
        chip.runTo(chip.cpu.cycles() + 400);
        assertEquals(0x08, chip.read(0xB9));
        chip.write(0xBB, 0x78);
        chip.write(0xBC, 0x84);
        chip.runTo(chip.cpu.cycles() + 9 * 160 - 10);
        assertEquals(0, chip.read(0xBC) & 0x80, "nine bits of 160 cycles: 100 kHz");
        chip.runTo(chip.cpu.cycles() + 20);

        assertEquals(0x20, chip.read(0xB9));
    }

    @Test
    void twiWritesToAndReadsFromWhoeverAcknowledges() {
        List<String> seen = new ArrayList<>();
        chip.chip.twi().connect(new Twi.Peer() {
            @Override
            public boolean is(int address) {
                return address == 0x3C;
            }

            @Override
            public boolean holdsTheWires() {
                return false;
            }

            @Override
            public void begun() {
                seen.add("begun");
            }

            @Override
            public boolean written(int value, long cycle) {
                seen.add("written " + value);
                return value < 100;
            }

            @Override
            public int read() {
                return 0x5A;
            }

            @Override
            public void ended(long cycle) {
                seen.add("ended");
            }
        });

        assertEquals(List.of(0x08, 0x18, 0x28, 0x30), transfer(0xA4, 0x78, 7, 200));
        assertEquals(List.of(0x10, 0x40), transfer(0xA4, 0x79));
        chip.write(0xBC, 0xC4);
        chip.runTo(chip.cpu.cycles() + 400);
        assertEquals(0x50, chip.read(0xB9));
        assertEquals(0x5A, chip.read(0xBB));
        chip.write(0xBC, 0x94);
        assertEquals(0, chip.read(0xBC) & 0x10, "the stop is over");
        assertEquals(List.of("begun", "written 7", "written 200", "ended", "begun", "ended"), seen);
    }

    /** A start, then bytes; the status after each. */
    private List<Integer> transfer(int start, int... bytes) {
        List<Integer> states = new ArrayList<>();
        chip.write(0xBC, start);
        chip.runTo(chip.cpu.cycles() + 400);
        states.add(chip.read(0xB9));
        for (int one : bytes) {
            chip.write(0xBB, one);
            chip.write(0xBC, 0x84);
            chip.runTo(chip.cpu.cycles() + 400);
            states.add(chip.read(0xB9));
        }
        return states;
    }

    @Test
    void aPinChangeAsksForItsBanksInterrupt() {
        chip.write(0x68, 1);
        chip.write(0x6B, 4);
        chip.chip.port('B').hold(2, 1, chip.cpu.cycles());

        assertEquals(1, chip.read(0x3B));
    }

    @Test
    void whatIsNotModelledStopsTheProgramByName() {
        StoppedException oscillator = assertThrows(StoppedException.class, () -> chip.write(0x66, 1));
        StoppedException nothing = assertThrows(StoppedException.class, () -> chip.write(0xFF, 1));
        StoppedException beyond = assertThrows(StoppedException.class, () -> chip.write(0x900, 1));

        assertEquals("uses OSCCAL (0x66), which is not modelled", oscillator.getMessage());
        assertEquals("goes to address 0xFF, where atmega328p has no register", nothing.getMessage());
        assertEquals("goes to address 0x900, and memory ends with 0x8FF", beyond.getMessage());
    }

    @Test
    void interruptsOfSeveralPartsComeByTheirVectors() {
        Poke.interrupts(chip.cpu, true);
        chip.write(0x3D, 3);
        chip.write(0x69, 0);
        chip.chip.port('D').hold(2, 1, 0);

        chip.runTo(chip.cpu.cycles() + 1);

        assertTrue(chip.cpu.byteAddress() == 8, () -> "INT1, low, at 0x8: " + chip.cpu.byteAddress());
    }
}
