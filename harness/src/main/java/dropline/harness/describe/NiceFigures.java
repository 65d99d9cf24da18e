package dropline.harness.describe;

import java.math.BigDecimal;

/** One, two or five times a power of ten, as scales are divided. */
final class NiceFigures {
    private static final int[] STEPS = {1, 2, 5, 10};

    private NiceFigures() {}

    /** The greatest at or below a figure above 0. */
    static BigDecimal atMost(double figure) {
        BigDecimal exact = new BigDecimal(figure);
        BigDecimal decade = decade(exact);
        BigDecimal nice = decade;
        for (int step : STEPS) {
            BigDecimal next = decade.multiply(BigDecimal.valueOf(step));
            nice = next.compareTo(exact) <= 0 ? next : nice;
        }
        return nice;
    }

    /** The least at or above a figure above 0. */
    static BigDecimal atLeast(double figure) {
        BigDecimal exact = new BigDecimal(figure);
        BigDecimal decade = decade(exact);
        for (int step : STEPS) {
            BigDecimal next = decade.multiply(BigDecimal.valueOf(step));
            if (next.compareTo(exact) >= 0) {
                return next;
            }
        }
        throw new AssertionError(figure);
    }

    /** The power of ten at or below it. */
    private static BigDecimal decade(BigDecimal figure) {
        return BigDecimal.ONE.scaleByPowerOfTen(figure.precision() - figure.scale() - 1);
    }
}
