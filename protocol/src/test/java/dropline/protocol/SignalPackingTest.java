package dropline.protocol;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Random;
import org.junit.jupiter.api.Test;

final class SignalPackingTest {

    @Test
    void widthFollowsFromTheNumberOfSteps() {
        assertEquals(1, SignalPacking.valueBytes(0));
        assertEquals(1, SignalPacking.valueBytes(255));
        assertEquals(2, SignalPacking.valueBytes(256));
        assertEquals(2, SignalPacking.valueBytes(65_535));
        assertEquals(4, SignalPacking.valueBytes(65_536));
        assertEquals(4, SignalPacking.valueBytes(4_294_967_295L));
    }

    @Test
    void moreStepsThanFourBytesHoldAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> SignalPacking.valueBytes(4_294_967_296L));
        assertThrows(IllegalArgumentException.class, () -> SignalPacking.valueBytes(-1));
    }

    @Test
    void negativeValuesTravelAsTwosComplementMostSignificantByteFirst() {
        byte[] target = new byte[4];

        int end = SignalPacking.put(-2, 2, target, 1);

        assertEquals(3, end);
        assertArrayEquals(new byte[] {0, (byte) 0xFF, (byte) 0xFE, 0}, target);
        assertEquals(0xFFFE, SignalPacking.get(target, 1, 2));
        assertEquals(-2, SignalPacking.unpack(0xFFFE, 2, -100));
    }

    @Test
    void everyValueOfARangeComesBackWhereverTheRangeLies() {
        long seed = 11;
        Random random = new Random(seed);
        for (int round = 0; round < 2000; round++) {
            int valueBytes = 1 << random.nextInt(3);
            long lowest = random.nextLong() >> 20;
            long value = lowest + (random.nextLong() >>> (64 - 8 * valueBytes));
            byte[] wire = new byte[4];
            SignalPacking.put(value, valueBytes, wire, 0);

            long back = SignalPacking.unpack(SignalPacking.get(wire, 0, valueBytes), valueBytes, lowest);

            assertEquals(value, back, "seed " + seed + " round " + round);
            assertEquals(SignalPacking.pack(value, valueBytes), SignalPacking.get(wire, 0, valueBytes));
        }
    }
}
