package dropline.protocol;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

final class BytesTest {

    @Test
    void bytesAreEqualByValueAndPrintedAsPairs() {
        Bytes bytes = Bytes.of(0x01, 0xFF, 0x10A);

        assertEquals("01 FF 0A", bytes.toString());
        assertEquals(Bytes.ofHex("01 ff 0a"), bytes);
        assertEquals(Bytes.ofHex("01 FF 0A").hashCode(), bytes.hashCode());
        assertNotEquals(Bytes.of(0x01, 0xFF), bytes);
        assertEquals(0xFF, bytes.at(1));
    }

    @Test
    void whatIsDoneToTheArraysBehindChangesNothing() {
        byte[] source = {1, 2, 3};
        Bytes bytes = Bytes.copyOf(source, 1, 2);

        source[1] = 9;
        bytes.toArray()[0] = 9;

        assertEquals(Bytes.of(2, 3), bytes);
    }

    @Test
    void whatIsNoPairOfHexadecimalDigitsIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> Bytes.ofHex("0G"));
    }
}
