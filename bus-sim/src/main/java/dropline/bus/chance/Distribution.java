package dropline.bus.chance;

/**
 * A random time with a stated maximum.
 *
 * @param shape how the time above {@code baseNanos} is spread
 * @param baseNanos the least value, ns, at least 0
 * @param spreadNanos the width of a uniform spread or the mean of an exponential one, ns, at least 0
 * @param maxNanos the stated maximum, ns; draws beyond it are held at it. {@link Long#MAX_VALUE} where none is stated
 */
public record Distribution(Shape shape, long baseNanos, long spreadNanos, long maxNanos) {

    /** How a random time is spread above its least value. */
    public enum Shape {
        CONSTANT,
        UNIFORM,
        EXPONENTIAL
    }

    public Distribution {
        if (baseNanos < 0 || spreadNanos < 0) {
            throw new IllegalArgumentException(
                    "times must not be negative: baseNanos=" + baseNanos + " spreadNanos=" + spreadNanos);
        }
        if (maxNanos < baseNanos) {
            throw new IllegalArgumentException(
                    "maximum must be at least the base: maxNanos=" + maxNanos + " baseNanos=" + baseNanos);
        }
    }

    /** Always the same time. */
    public static Distribution constant(long nanos) {
        return new Distribution(Shape.CONSTANT, nanos, 0, nanos);
    }

    /** Anything from {@code lowNanos} up to {@code highNanos}, each equally likely. */
    public static Distribution uniform(long lowNanos, long highNanos) {
        return new Distribution(Shape.UNIFORM, lowNanos, highNanos - lowNanos, highNanos);
    }

    /** A base plus an exponential time of this mean. */
    public static Distribution exponential(long baseNanos, long meanNanos, long maxNanos) {
        return new Distribution(Shape.EXPONENTIAL, baseNanos, meanNanos, maxNanos);
    }

    /** The time for a draw in [0, 1), ns. */
    public long sampleNanos(double draw) {
        return switch (shape) {
            case CONSTANT -> baseNanos;
            case UNIFORM -> baseNanos + (long) (draw * spreadNanos);
            case EXPONENTIAL -> Math.min(maxNanos, baseNanos + Exponential.nanos(draw, spreadNanos));
        };
    }

    /** No draw is longer, ns; {@link Long#MAX_VALUE} where no maximum is stated. */
    public long longestNanos() {
        return switch (shape) {
            case CONSTANT -> baseNanos;
            case UNIFORM -> baseNanos + spreadNanos;
            case EXPONENTIAL -> maxNanos;
        };
    }

    /** The mean before any draw is held at the maximum, ns. */
    public double meanNanos() {
        return switch (shape) {
            case CONSTANT -> baseNanos;
            case UNIFORM -> baseNanos + spreadNanos / 2.0;
            case EXPONENTIAL -> baseNanos + (double) spreadNanos;
        };
    }
}
