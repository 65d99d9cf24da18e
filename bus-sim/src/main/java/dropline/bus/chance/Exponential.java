package dropline.bus.chance;

/**
 * Whole exponential times, as fast as a table makes them and to the nanosecond those of {@link StrictMath#log1p}. The
 * logarithm of a number in [1, 2) is that of the nearest number in a table and a short series for the rest; where the
 * product lies so near a whole number that its error could matter, which is rare, the library's logarithm decides.
 */
final class Exponential {
    private static final int BITS = 8;
    private static final int MANTISSA_BITS = 52;
    private static final int EXPONENT_OF_ONE = 1023;
    private static final long MANTISSA = (1L << MANTISSA_BITS) - 1;
    private static final double LN_2 = StrictMath.log(2);

    /**
     * More than the fast logarithm is ever off, which is 40 units in the last place of 1: the series is cut where its
     * terms fall below 2^-63, and what is added is below 37.
     */
    private static final double ERROR = 1e-13;

    private static final double[] LOG = new double[1 << BITS];
    private static final double[] CENTRE = new double[1 << BITS];
    private static final double[] INVERSE = new double[1 << BITS];

    static {
        for (int i = 0; i < LOG.length; i++) {
            CENTRE[i] = 1 + (i + 0.5) / LOG.length;
            LOG[i] = StrictMath.log(CENTRE[i]);
            INVERSE[i] = 1 / CENTRE[i];
        }
    }

    private Exponential() {}

    /** {@code (long) (-StrictMath.log1p(-draw) * meanNanos)} for a draw in [0, 1) of 53 bits. */
    static long nanos(double draw, long meanNanos) {
        double time = minusLog(1 - draw) * meanNanos;
        double error = ERROR * meanNanos;
        long nanos = (long) (time + error);
        return time - error >= nanos ? nanos : (long) (-StrictMath.log1p(-draw) * meanNanos);
    }

    /** Of a number in (0, 1]; a draw's difference from 1 is exact. */
    private static double minusLog(double number) {
        long bits = Double.doubleToRawLongBits(number);
        int exponent = (int) (bits >>> MANTISSA_BITS) - EXPONENT_OF_ONE;
        int i = (int) ((bits & MANTISSA) >>> (MANTISSA_BITS - BITS));
        double mantissa = Double.longBitsToDouble((bits & MANTISSA) | ((long) EXPONENT_OF_ONE << MANTISSA_BITS));
        double r = (mantissa - CENTRE[i]) * INVERSE[i];
        double series = r * (1 - r * (1 / 2.0 - r * (1 / 3.0 - r * (1 / 4.0 - r * (1 / 5.0 - r * (1 / 6.0))))));
        return -(exponent * LN_2 + (LOG[i] + series));
    }
}
