package dropline.protocol.crc;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.protocol.Bytes;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import java.util.zip.CRC32;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class CrcTest {
    private static final byte[] NINE_DIGITS = "123456789".getBytes(StandardCharsets.US_ASCII);

    /** RevEng catalogue, the check of the ASCII digits 1 to 9; the values of MODBUS, KERMIT and ARC from memory. */
    @ParameterizedTest
    @CsvSource({
        "CRC-16/MODBUS,    4B37",
        "CRC-16/IBM-3740,  29B1",
        "CRC-16/XMODEM,    31C3",
        "CRC-16/KERMIT,    2189",
        "CRC-16/IBM-SDLC,  906E",
        "CRC-16/ARC,       BB3D",
        "CRC-8/SMBUS,      F4",
        "CRC-8/MAXIM-DOW,  A1",
        "CRC-32/ISO-HDLC,  CBF43926"
    })
    void nineDigitsGiveTheCataloguesCheck(String name, String check) {
        Crc crc = new Crc(CrcCatalogue.named(name));

        assertEquals(Long.parseLong(check, 16), crc.of(NINE_DIGITS, 0, 9));
        assertEquals(Long.parseLong(check, 16), crc.of(Bytes.copyOf(NINE_DIGITS, 0, 9)));
    }

    /** MODBUS over serial line V1.02, section 6.2.2, figure 30; the text on page 41 prints the two bytes swapped. */
    @Test
    void modbusOf0207Is1241() {
        assertEquals(0x1241, new Crc(CrcCatalogue.CRC_16_MODBUS).of(Bytes.of(0x02, 0x07)));
    }

    @Test
    void nothingGivesTheInitialRegister() {
        assertEquals(0xFFFF, new Crc(CrcCatalogue.CRC_16_MODBUS).of(Bytes.of()));
    }

    @Test
    void modbusFollowedByItsOwnCheckLowByteFirstLeavesZero() {
        assertEquals(0, new Crc(CrcCatalogue.CRC_16_MODBUS).of(Bytes.of(0x02, 0x07, 0x41, 0x12)));
    }

    /** RevEng catalogue: the register before the final exclusive-or, once the check has gone through it too. */
    @Test
    void residuesAreTheCatalogues() {
        assertEquals(0xF0B8, registerAfterOwnCheck(CrcCatalogue.CRC_16_IBM_SDLC));
        assertEquals(0xDEBB_20E3L, registerAfterOwnCheck(CrcCatalogue.CRC_32_ISO_HDLC));
    }

    @Test
    void xmodemCannotSeeLeadingZeros() {
        Crc xmodem = new Crc(CrcCatalogue.CRC_16_XMODEM);

        assertEquals(xmodem.of(Bytes.of(5)), xmodem.of(Bytes.of(0, 0, 5)));
        assertNotEquals(
                new Crc(CrcCatalogue.CRC_16_IBM_3740).of(Bytes.of(5)),
                new Crc(CrcCatalogue.CRC_16_IBM_3740).of(Bytes.of(0, 0, 5)));
    }

    @Test
    void thirtyTwoBitsAgreeWithTheLibrarysZipCheck() {
        long seed = 32;
        Random random = new Random(seed);
        Crc crc = new Crc(CrcCatalogue.CRC_32_ISO_HDLC);
        for (int round = 0; round < 500; round++) {
            byte[] bytes = new byte[random.nextInt(300)];
            random.nextBytes(bytes);
            CRC32 zip = new CRC32();
            zip.update(bytes);

            assertEquals(zip.getValue(), crc.of(bytes, 0, bytes.length), "seed " + seed + " round " + round);
        }
    }

    @Test
    void everyCheckAgreesWithDivisionBitByBit() {
        long seed = 8;
        Random random = new Random(seed);
        for (int round = 0; round < 300; round++) {
            int width = 8 << random.nextInt(3);
            long mask = (1L << width) - 1;
            CrcParameters parameters = new CrcParameters(
                    "made up",
                    width,
                    (random.nextLong() & mask) | 1,
                    random.nextLong() & mask,
                    random.nextBoolean(),
                    random.nextBoolean(),
                    random.nextLong() & mask);
            byte[] bytes = new byte[random.nextInt(20)];
            random.nextBytes(bytes);

            assertEquals(
                    bitByBit(parameters, bytes),
                    new Crc(parameters).of(bytes, 0, bytes.length),
                    "seed " + seed + " round " + round + " " + parameters);
        }
    }

    @Test
    void bareCcittIsRefusedWithItsCandidates() {
        IllegalArgumentException refused =
                assertThrows(IllegalArgumentException.class, () -> CrcCatalogue.named("crc-ccitt"));

        assertEquals(
                "CRC name must be unambiguous: name=crc-ccitt may mean "
                        + "CRC-16/KERMIT, CRC-16/IBM-3740, CRC-16/XMODEM, CRC-16/IBM-SDLC",
                refused.getMessage());
    }

    @Test
    void aliasesAreUnderstoodAndUnknownNamesRefused() {
        assertEquals(CrcCatalogue.CRC_16_IBM_3740, CrcCatalogue.named("crc-16/ccitt-false"));
        assertEquals(CrcCatalogue.CRC_16_KERMIT, CrcCatalogue.named("CRC-16/CCITT-TRUE"));
        IllegalArgumentException refused =
                assertThrows(IllegalArgumentException.class, () -> CrcCatalogue.named("CRC-17"));
        assertTrue(String.valueOf(refused.getMessage()).startsWith("CRC name must be one of CRC-16/MODBUS, "));
    }

    /** Makers use these names for different checks (RevEng catalogue: aliases of CRC-16/KERMIT and others). */
    @Test
    void aNameThatMeansSeveralChecksGivesThemAll() {
        assertEquals(4, CrcCatalogue.mayMean("CRC-CCITT").size());
        assertEquals(CrcCatalogue.mayMean("crc16 ccitt"), CrcCatalogue.mayMean("CRC-16-CCITT"));
        assertEquals(2, CrcCatalogue.mayMean("CRC8").size());
        assertEquals(List.of(CrcCatalogue.CRC_32_ISO_HDLC), CrcCatalogue.mayMean("crc-32"));
        assertEquals(List.of(), CrcCatalogue.mayMean("CRC-17"));
        assertThrows(IllegalArgumentException.class, () -> CrcCatalogue.named("CRC16"));
    }

    @Test
    void impossibleParametersAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> new CrcParameters("x", 12, 1, 0, false, false, 0));
        assertThrows(IllegalArgumentException.class, () -> new CrcParameters("x", 8, 0x107, 0, false, false, 0));
        assertThrows(IllegalArgumentException.class, () -> new CrcParameters("x", 8, 6, 0, false, false, 0));
        assertThrows(IllegalArgumentException.class, () -> new CrcParameters("x", 8, 7, -1, false, false, 0));
    }

    private static long registerAfterOwnCheck(CrcParameters parameters) {
        Crc crc = new Crc(parameters);
        long register = crc.start();
        for (byte next : NINE_DIGITS) {
            register = crc.update(register, next);
        }
        long check = crc.finish(register);
        for (int shift = 0; shift < parameters.width(); shift += 8) {
            register = crc.update(register, (int) (check >>> shift));
        }
        return register;
    }

    /** The Rocksoft model as written: no table, no mirrored register. */
    private static long bitByBit(CrcParameters parameters, byte[] bytes) {
        int width = parameters.width();
        long register = parameters.initial();
        for (byte next : bytes) {
            for (int bit = 0; bit < 8; bit++) {
                int in = next >> (parameters.reflectIn() ? bit : 7 - bit) & 1;
                long out = register >>> (width - 1) ^ in;
                register = register << 1 & parameters.mask();
                register ^= out == 1 ? parameters.polynomial() : 0;
            }
        }
        long result = parameters.reflectOut() ? Long.reverse(register) >>> (64 - width) : register;
        return result ^ parameters.finalXor();
    }
}
