package dropline.harness.record;

import static dropline.harness.record.SequenceCount.Place.LATE;
import static dropline.harness.record.SequenceCount.Place.NEWEST;
import static dropline.harness.record.SequenceCount.Place.REPEATED;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

final class SequenceCountTest {

    @Test
    void aGapIsMissingUntilItsMessageComesLate() {
        SequenceCount count = new SequenceCount(0);

        assertEquals(NEWEST, count.take(10));
        assertEquals(NEWEST, count.take(13));
        assertEquals(2, count.missing());
        assertEquals(LATE, count.take(11));
        assertEquals(REPEATED, count.take(11));
        assertEquals(REPEATED, count.take(13));
        assertEquals(1, count.missing());
    }

    @Test
    void aCounterOfEightBitsRunsOver() {
        SequenceCount count = new SequenceCount(256);

        count.take(254);
        count.take(1);

        assertEquals(2, count.missing());
        assertEquals(LATE, count.take(255));
    }

    @Test
    void aSenderThatBeginsAnewHasLostNothing() {
        SequenceCount count = new SequenceCount(0);

        count.take(5_000);
        assertEquals(NEWEST, count.take(1));
        assertEquals(NEWEST, count.take(2));

        assertEquals(0, count.missing());
        assertEquals(1, count.restarts());
    }

    @Test
    void readPlusMissingIsSentHoweverMessagesAreMixedUpOrLost() {
        for (int seed = 0; seed < 200; seed++) {
            Random random = new Random(seed);
            List<Integer> sent = new ArrayList<>();
            for (int i = 0; i < 500; i++) {
                sent.add(i);
            }
            for (int i = 1; i + 8 < sent.size() - 1; i += 8) {
                Collections.shuffle(sent.subList(i, i + 8), random);
            }
            SequenceCount count = new SequenceCount(0);
            BitSet arrived = new BitSet();
            for (int number : sent) {
                boolean lost = number > 0 && number < 499 && random.nextInt(4) == 0;
                if (!lost) {
                    count.take(number);
                    arrived.set(number);
                }
            }
            assertEquals(500, arrived.cardinality() + count.missing(), "seed " + seed);
        }
    }
}
