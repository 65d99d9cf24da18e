package dropline.protocol.custom;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.protocol.custom.DigitsForm.Style;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

final class NumberFormTest {
    private static final List<NumberForm> ALL = List.of(
            new BinaryForm(1, false, false),
            new BinaryForm(2, true, true),
            new BinaryForm(3, true, false),
            new BinaryForm(4, false, true),
            new FloatForm(4, true),
            new FloatForm(8, false),
            new DigitsForm(Style.DIGITS, 4, false),
            new DigitsForm(Style.DIGITS, 18, true),
            new DigitsForm(Style.SIGNED, 5, false),
            new DigitsForm(Style.SIGNED, 9, true),
            new DigitsForm(Style.PADDED, 6, false),
            new DigitsForm(Style.HEX, 8, false));

    @Test
    void whateverFitsComesBackWithinItsCharacters() {
        long seed = 3;
        Random random = new Random(seed);
        for (NumberForm form : ALL) {
            for (int round = 0; round < 500; round++) {
                long value = random.nextLong(form.least(), form.most() + 1) >> random.nextInt(40);
                byte[] bytes = new byte[form.chars()];
                form.put(value, bytes, 0);
                Cursor cursor = new Cursor(bytes, 0, bytes.length);

                long back = form.read(cursor);

                String note = form + " seed " + seed + " value " + value;
                assertEquals(value, back, note);
                assertFalse(cursor.failed(), note);
                assertEquals(bytes.length, cursor.at(), note);
                for (int i = 0; i < bytes.length; i++) {
                    assertTrue(form.canBe(i, bytes[i] & 0xFF), note);
                }
            }
        }
    }

    /** As printf writes them: %04d, %+05d, %5d, %02X (ISO C, 7.21.6.1). */
    @Test
    void textIsWhatAFormattedPrintGives() {
        assertEquals("0042", text(new DigitsForm(Style.DIGITS, 4, false), 42));
        assertEquals("-0042", text(new DigitsForm(Style.SIGNED, 5, false), -42));
        assertEquals("+0042", text(new DigitsForm(Style.SIGNED, 5, false), 42));
        assertEquals("  -42", text(new DigitsForm(Style.PADDED, 5, false), -42));
        assertEquals("    0", text(new DigitsForm(Style.PADDED, 5, false), 0));
        assertEquals("2A", text(new DigitsForm(Style.HEX, 2, false), 42));
    }

    /** IEEE 754: 1.0 is 3F800000 in 32 bits. */
    @Test
    void floatingNumbersStandAsTheStandardHasThem() {
        byte[] bytes = new byte[4];
        new FloatForm(4, false).put(1, bytes, 0);
        assertEquals(0x3F, bytes[0]);
        assertEquals((byte) 0x80, bytes[1]);

        Cursor notANumber = new Cursor(new byte[] {0x7F, (byte) 0xC0, 0, 0}, 0, 4);
        new FloatForm(4, false).read(notANumber);
        assertTrue(notANumber.failed());
    }

    @Test
    void aNumberTooLargeIsCutToItsLastDigitsOrBits() {
        assertEquals("345", text(new DigitsForm(Style.DIGITS, 3, false), 12_345));
        assertEquals("-345", text(new DigitsForm(Style.SIGNED, 4, false), -12_345));
        byte[] one = new byte[1];
        new BinaryForm(1, false, false).put(0x1234, one, 0);
        assertEquals(0x34, one[0]);
    }

    @Test
    void impossibleWidthsAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> new BinaryForm(5, false, false));
        assertThrows(IllegalArgumentException.class, () -> new FloatForm(2, false));
        assertThrows(IllegalArgumentException.class, () -> new DigitsForm(Style.SIGNED, 1, false));
        assertThrows(IllegalArgumentException.class, () -> new DigitsForm(Style.HEX, 9, false));
    }

    private static String text(NumberForm form, long value) {
        byte[] bytes = new byte[form.chars()];
        form.put(value, bytes, 0);
        return new String(bytes, StandardCharsets.US_ASCII);
    }
}
