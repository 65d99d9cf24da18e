package dropline.bus.clock;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dropline.bus.chance.Draws;
import dropline.protocol.CharacterFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class UartClockTest {

    /** Ten bits divided by the baud rate; the arithmetic any UART data sheet gives. */
    @ParameterizedTest
    @CsvSource({"9600, 1041667", "115200, 86806", "250000, 40000", "500000, 20000", "1000000, 10000"})
    void characterOfTenBitsTakes(int baud, long nanos) {
        assertEquals(nanos, UartClock.exact(baud).charsNanos(CharacterFormat.EIGHT_N_ONE, 1));
    }

    /** MODBUS over serial line V1.02, section 2.5.1: eleven bits a character. */
    @ParameterizedTest
    @CsvSource({"9600, 1145833", "19200, 572917"})
    void characterOfElevenBitsTakes(int baud, long nanos) {
        assertEquals(nanos, UartClock.exact(baud).charsNanos(CharacterFormat.EIGHT_E_ONE, 1));
    }

    /** 256 characters of 11 bits at 19200 baud: 146.67 ms, by arithmetic. */
    @Test
    void longFramesAreRoundedOnce() {
        assertEquals(146_666_667, UartClock.exact(19200).charsNanos(CharacterFormat.EIGHT_E_ONE, 256));
    }

    @Test
    void lastCharacterIsHeardAtNineAndAHalfBits() {
        assertEquals(19_000, UartClock.exact(500_000).heardNanos(CharacterFormat.EIGHT_N_ONE, 1));
    }

    @Test
    void ticksAndNanosInvertEachOtherWithoutOverflowForAYear() {
        long seed = 99;
        long year = 366L * 86_400;
        for (int i = 0; i < 10_000; i++) {
            long hz = 1 + (long) (Draws.draw(seed, 2L * i) * 1e9);
            long ticks = (long) (Draws.draw(seed, 2L * i + 1) * year * hz);

            long nanos = UartClock.ticksToNanos(ticks, hz);

            assertEquals(ticks, UartClock.nanosToTicks(nanos, hz), "seed " + seed + " hz " + hz);
        }
    }
}
