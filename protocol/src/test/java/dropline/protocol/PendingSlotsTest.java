package dropline.protocol;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.BitSet;
import java.util.Random;
import org.junit.jupiter.api.Test;

final class PendingSlotsTest {

    @Test
    void agreesWithABitSetForEveryStartAndEnd() {
        long seed = 7;
        Random random = new Random(seed);
        for (int round = 0; round < 20; round++) {
            int slots = 1 + random.nextInt(200);
            BitSet set = new BitSet();
            long[] pending = new long[(slots + 63) / 64];
            for (int i = 0; i < slots / 10; i++) {
                int slot = random.nextInt(slots);
                set.set(slot);
                pending[slot / 64] |= 1L << slot;
            }
            for (int from = 0; from <= slots; from++) {
                for (int end = 0; end <= slots; end++) {
                    int expected = set.nextSetBit(from) < end ? set.nextSetBit(from) : -1;
                    assertEquals(expected, PendingSlots.next(pending, from, end), "seed " + seed + " round " + round);
                }
            }
        }
    }

    @Test
    void wrapsRoundPastTheLastSlot() {
        long[] pending = {1L << 3, 1L << 2};

        assertEquals(3, PendingSlots.nextWrapping(pending, 0, 70));
        assertEquals(66, PendingSlots.nextWrapping(pending, 4, 70));
        assertEquals(3, PendingSlots.nextWrapping(pending, 67, 70));
        assertEquals(3, PendingSlots.nextWrapping(pending, 70, 70));
    }

    @Test
    void findsNothingWhereNothingIsPending() {
        assertEquals(-1, PendingSlots.nextWrapping(new long[2], 5, 128));
        assertEquals(-1, PendingSlots.nextWrapping(new long[0], 0, 0));
    }
}
