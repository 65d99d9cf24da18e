package dropline.protocol.cobs;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Vectors from the test file of the cobs-python library (github cmcqueen/cobs-python, src/cobs/cobs/test.py). */
final class CobsTest {

    @Test
    void nothingBecomesOneCode() {
        assertEncodes(bytes(), bytes(1));
    }

    @Test
    void zerosBecomeOneCodeMoreThanThereAre() {
        assertEncodes(bytes(0), bytes(1, 1));
        assertEncodes(bytes(0, 0), bytes(1, 1, 1));
    }

    @Test
    void aZeroInsideLeadingOrTrailingIsReplacedByALength() {
        assertEncodes(bytes("12345", 0, "6789"), bytes(6, "12345", 5, "6789"));
        assertEncodes(bytes(0, "12345", 0, "6789"), bytes(1, 6, "12345", 5, "6789"));
        assertEncodes(bytes("12345", 0, "6789", 0), bytes(6, "12345", 5, "6789", 1));
    }

    @Test
    void aBlockOf253GrowsByOne() {
        assertEncodes(range(0x01, 0xFD), bytes(0xFE, range(0x01, 0xFD)));
    }

    @Test
    void aBlockOf254GrowsByOneAndHasNoTrailingCode() {
        assertEncodes(range(0x01, 0xFE), bytes(0xFF, range(0x01, 0xFE)));
        assertEquals(255, encode(range(0x01, 0xFE)).length);
    }

    /** The listing printed with the paper (from memory) writes it like this. */
    @Test
    void aBlockOf254WithATrailingCodeIsReadToo() {
        assertArrayEquals(range(0x01, 0xFE), decode(bytes(0xFF, range(0x01, 0xFE), 1)));
    }

    @Test
    void longerBlocksAreSplit() {
        assertEncodes(range(0x01, 0xFF), bytes(0xFF, range(0x01, 0xFE), 2, 0xFF));
        assertEncodes(bytes(0, range(0x01, 0xFF)), bytes(1, 0xFF, range(0x01, 0xFE), 2, 0xFF));
    }

    @Test
    void aZeroRightAfterAFullBlockIsKept() {
        assertEncodes(bytes(range(0x01, 0xFE), 0), bytes(0xFF, range(0x01, 0xFE), 1, 1));
    }

    /** From memory, after the examples of an encyclopedia. */
    @Test
    void zerosNearTheEndOfAFullBlockAreKept() {
        assertEncodes(bytes(range(0x02, 0xFF), 0), bytes(0xFF, range(0x02, 0xFF), 1, 1));
        assertEncodes(bytes(range(0x03, 0xFF), 0, 1), bytes(0xFE, range(0x03, 0xFF), 2, 1));
    }

    @Test
    void lengthsAreBoundedByOneMoreForEvery254() {
        assertEquals(1, Cobs.maxEncodedLength(0));
        assertEquals(2, Cobs.maxEncodedLength(1));
        assertEquals(255, Cobs.maxEncodedLength(254));
        assertEquals(257, Cobs.maxEncodedLength(255));
    }

    @Test
    void contradictoryEncodingsAreRejected() {
        assertRejected(bytes());
        assertRejected(bytes(0));
        assertRejected(bytes(5, "123"));
        assertRejected(bytes(5, "1234", 0));
        assertRejected(bytes(5, "12", 0, "4"));
    }

    @Test
    void everythingComesBackAndHoldsNoZero() {
        long seed = 1999;
        Random random = new Random(seed);
        for (int round = 0; round < 3000; round++) {
            byte[] plain = new byte[random.nextInt(700)];
            int zeroOneIn = 1 + random.nextInt(300);
            for (int i = 0; i < plain.length; i++) {
                plain[i] = (byte) (random.nextInt(zeroOneIn) == 0 ? 0 : 1 + random.nextInt(255));
            }

            byte[] encoded = encode(plain);

            String note = "seed " + seed + " round " + round;
            assertTrue(encoded.length <= Cobs.maxEncodedLength(plain.length), note);
            for (byte next : encoded) {
                assertNotEquals(0, next, note);
            }
            assertArrayEquals(plain, decode(encoded), note);
        }
    }

    @Test
    void upTo253BytesStuffingCostsExactlyOne() {
        Random random = new Random(3);
        for (int length = 0; length <= 253; length++) {
            byte[] plain = new byte[length];
            random.nextBytes(plain);
            assertEquals(length + 1, encode(plain).length);
        }
    }

    @Test
    void garbageIsDecodedOrRejectedWithoutLeavingItsBounds() {
        long seed = 4;
        Random random = new Random(seed);
        for (int round = 0; round < 20_000; round++) {
            byte[] garbage = new byte[random.nextInt(40)];
            random.nextBytes(garbage);
            byte[] target = new byte[garbage.length];

            int length = Cobs.decode(garbage, 0, garbage.length, target);

            assertTrue(length >= -1 && length <= Math.max(0, garbage.length - 1), "seed " + seed + " round " + round);
        }
    }

    private static void assertEncodes(byte[] plain, byte[] encoded) {
        assertArrayEquals(encoded, encode(plain));
        assertArrayEquals(plain, decode(encoded));
    }

    private static void assertRejected(byte[] encoded) {
        assertEquals(-1, Cobs.decode(encoded, 0, encoded.length, new byte[encoded.length]));
    }

    private static byte[] encode(byte[] plain) {
        byte[] target = new byte[Cobs.maxEncodedLength(plain.length) + 3];
        return Arrays.copyOfRange(target, 3, 3 + Cobs.encode(plain, 0, plain.length, target, 3));
    }

    private static byte[] decode(byte[] encoded) {
        byte[] target = new byte[encoded.length];
        return Arrays.copyOf(target, Cobs.decode(encoded, 0, encoded.length, target));
    }

    private static byte[] range(int first, int last) {
        byte[] range = new byte[last - first + 1];
        for (int i = 0; i < range.length; i++) {
            range[i] = (byte) (first + i);
        }
        return range;
    }

    private static byte[] bytes(Object... parts) {
        ByteArrayOutputStream joined = new ByteArrayOutputStream();
        for (Object part : parts) {
            if (part instanceof Integer octet) {
                joined.write(octet);
            } else if (part instanceof String text) {
                joined.writeBytes(text.getBytes(StandardCharsets.US_ASCII));
            } else {
                joined.writeBytes((byte[]) part);
            }
        }
        return joined.toByteArray();
    }
}
