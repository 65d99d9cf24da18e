package dropline.bus.chance;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

final class ExponentialTest {
    private static final double LEAST = 0x1.0p-53;

    private static long byTheLibrary(double draw, long meanNanos) {
        return (long) (-StrictMath.log1p(-draw) * meanNanos);
    }

    private static void check(double draw, long meanNanos) {
        assertEquals(
                byTheLibrary(draw, meanNanos),
                Exponential.nanos(draw, meanNanos),
                () -> "draw=" + draw + " meanNanos=" + meanNanos);
    }

    @Test
    void isTheLibrarysLogarithmToTheNanosecond() {
        long[] means = {0, 1, 3, 1_000, 50_000, 123_457, 7_000_000, 1_000_000_000, 60_000_000_000L};
        for (long ordinal = 0; ordinal < 400_000; ordinal++) {
            double draw = Draws.draw(17, ordinal);
            for (long mean : means) {
                check(draw, mean);
            }
        }
    }

    @Test
    void isItAtTheEndsAndAroundEveryBinaryStep() {
        for (long mean : new long[] {1, 50_000, 1_000_000_000}) {
            check(0, mean);
            check(LEAST, mean);
            check(1 - LEAST, mean);
            for (double step = 0.5; step > LEAST; step /= 2) {
                check(step, mean);
                check(step - LEAST, mean);
                check(1 - step, mean);
                check(1 - step + LEAST, mean);
            }
        }
    }
}
