package dropline.bus.chance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

final class DistributionTest {
    private static final int DRAWS = 200_000;

    @Test
    void meanOfExponentialIsBasePlusMean() {
        assertEquals(150_000, mean(Distribution.exponential(100_000, 50_000, Long.MAX_VALUE)), 500);
    }

    @Test
    void meanOfUniformLiesInTheMiddle() {
        assertEquals(200_000, mean(Distribution.uniform(100_000, 300_000)), 500);
    }

    @Test
    void nothingExceedsTheStatedMaximum() {
        Distribution held = Distribution.exponential(0, 50_000, 60_000);
        long stream = Draws.stream(5, Draws.nameHash("n"), Draws.Purpose.REPLY_GAP);
        for (int i = 0; i < DRAWS; i++) {
            assertTrue(held.sampleNanos(Draws.draw(stream, i)) <= 60_000);
        }
    }

    @Test
    void maximumBelowTheBaseIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> Distribution.exponential(10, 5, 9));
    }

    @Test
    void numberedNamesHaveStreamsOfTheirOwn() {
        long one = Draws.stream(1, Draws.nameHash("node12"), Draws.Purpose.REPLY_GAP);
        long other = Draws.stream(1, Draws.nameHash("node21"), Draws.Purpose.REPLY_GAP);

        int same = 0;
        for (int i = 0; i < 1000; i++) {
            same += Draws.draw(one, i) == Draws.draw(other, i) ? 1 : 0;
        }

        assertEquals(0, same);
    }

    private static double mean(Distribution distribution) {
        long stream = Draws.stream(5, Draws.nameHash("n"), Draws.Purpose.REPLY_GAP);
        double sum = 0;
        for (int i = 0; i < DRAWS; i++) {
            sum += distribution.sampleNanos(Draws.draw(stream, i));
        }
        return sum / DRAWS;
    }
}
