package dropline.protocol;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dropline.protocol.CharacterFormat.Parity;
import org.junit.jupiter.api.Test;

final class CharacterFormatTest {

    /** MODBUS over serial line V1.02, section 2.5.1: 11 bits with parity, and with two stop bits instead of it. */
    @Test
    void modbusCharactersTakeElevenBitsWithParityOrWithTwoStopBits() {
        assertEquals(11, CharacterFormat.EIGHT_E_ONE.bits());
        assertEquals(11, new CharacterFormat(8, Parity.NONE, 2).bits());
    }

    @Test
    void eightDataBitsWithoutParityTakeTenBits() {
        assertEquals(10, CharacterFormat.EIGHT_N_ONE.bits());
        assertEquals("8N1", CharacterFormat.EIGHT_N_ONE.toString());
    }

    @Test
    void impossibleFormatsAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> new CharacterFormat(4, Parity.NONE, 1));
        assertThrows(IllegalArgumentException.class, () -> new CharacterFormat(8, Parity.ODD, 3));
    }
}
