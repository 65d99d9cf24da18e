package dropline.protocol.modbus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.protocol.CharacterFormat;
import org.junit.jupiter.api.Test;

/** MODBUS over serial line V1.02, section 2.5.1.1 and the remark on page 13. */
final class ModbusTimingTest {
    private static final CharacterFormat ELEVEN_BITS = CharacterFormat.EIGHT_E_ONE;
    private static final CharacterFormat TEN_BITS = CharacterFormat.EIGHT_N_ONE;

    @Test
    void at9600BaudElevenBitsGive4010And1719Microseconds() {
        assertEquals(4_010_417, ModbusTiming.frameGapNanos(9600, ELEVEN_BITS));
        assertEquals(1_718_750, ModbusTiming.characterGapNanos(9600, ELEVEN_BITS));
        assertEquals(385, ModbusTiming.frameGapTenthsOfBit(9600, ELEVEN_BITS));
        assertEquals(165, ModbusTiming.characterGapTenthsOfBit(9600, ELEVEN_BITS));
    }

    /** Rounded up from 2005208.33 and 859375 ns. */
    @Test
    void atExactly19200BaudTheTimersStillFollowTheCharacter() {
        assertEquals(2_005_209, ModbusTiming.frameGapNanos(19_200, ELEVEN_BITS));
        assertEquals(859_375, ModbusTiming.characterGapNanos(19_200, ELEVEN_BITS));
        assertEquals(385, ModbusTiming.frameGapTenthsOfBit(19_200, ELEVEN_BITS));
    }

    @Test
    void above19200BaudTheTimersAreFixed() {
        for (int baud : new int[] {19_201, 38_400, 115_200, 1_000_000}) {
            assertEquals(1_750_000, ModbusTiming.frameGapNanos(baud, ELEVEN_BITS));
            assertEquals(750_000, ModbusTiming.characterGapNanos(baud, TEN_BITS));
        }
        assertEquals(672, ModbusTiming.frameGapTenthsOfBit(38_400, ELEVEN_BITS));
        assertEquals(288, ModbusTiming.characterGapTenthsOfBit(38_400, ELEVEN_BITS));
    }

    /** Many libraries count ten bits a character: right for 8N1, wrong for the specification's own characters. */
    @Test
    void tenBitCharactersShortenTheTimers() {
        assertEquals(3_645_834, ModbusTiming.frameGapNanos(9600, TEN_BITS));
        assertEquals(1_562_500, ModbusTiming.characterGapNanos(9600, TEN_BITS));
    }

    @Test
    void tenthsOfABitAreNeverShorterThanTheFixedTimersAndByLessThanOneTenthLonger() {
        for (int baud = 19_201; baud < 2_000_000; baud += 97) {
            long tenths = ModbusTiming.frameGapTenthsOfBit(baud, ELEVEN_BITS);
            assertTrue(tenths * 100_000_000 >= 1_750_000L * baud, "baud " + baud);
            assertTrue((tenths - 1) * 100_000_000 < 1_750_000L * baud, "baud " + baud);
        }
    }

    @Test
    void aBaudRateOfZeroIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> ModbusTiming.frameGapNanos(0, ELEVEN_BITS));
    }
}
