package dropline.bus.pit;

/**
 * How something moves. Speeds are in the shown signal's unit a second.
 *
 * @param ratePerSecond greatest speed; 0 for what does not move
 * @param accelerationPerSecond2 how fast it gains and loses speed, in the unit a second squared; 0 if at once
 * @param step what one step of its motor is, in the unit; 0 where that is not known
 * @param zeroing how it finds its zero, the signal's least value, once its node has restarted
 * @param zeroingPerSecond speed at which it does; 0 with {@link Zeroing#NONE}
 */
public record Motion(
        double ratePerSecond, double accelerationPerSecond2, double step, Zeroing zeroing, double zeroingPerSecond) {

    /** Of what does not move. */
    public static final Motion NONE = new Motion(0, 0, 0, Zeroing.NONE, 0);

    /** How a zero is found. */
    public enum Zeroing {
        /** Not at all: it is trusted to stand where it was left. */
        NONE,
        /** Down to a sensor at the zero. */
        SENSOR,
        /** Down against a stop, for as long as its whole range takes, since nothing tells when it is there. */
        STOP
    }

    public Motion {
        if (ratePerSecond < 0 || accelerationPerSecond2 < 0 || step < 0) {
            throw new IllegalArgumentException("speed, acceleration and step must not be negative: rate="
                    + ratePerSecond + " acceleration=" + accelerationPerSecond2 + " step=" + step);
        }
        if ((zeroing == Zeroing.NONE) != (zeroingPerSecond == 0) || zeroingPerSecond < 0) {
            throw new IllegalArgumentException(
                    "a zero is found at a speed above 0, if at all: zeroing=" + zeroing + " speed=" + zeroingPerSecond);
        }
    }

    /** At its greatest speed at once, and back to rest at once. */
    public static Motion atOnce(double ratePerSecond) {
        return new Motion(ratePerSecond, 0, 0, Zeroing.NONE, 0);
    }

    /** Longest time it takes to find its zero, ns; 0 if it does not look for it. */
    public long longestZeroingNanos(Signal signal) {
        return zeroing == Zeroing.NONE ? 0 : (long) Math.ceil((signal.max() - signal.min()) / zeroingPerSecond * 1e9);
    }

    /** Longest time it still goes the wrong way when it is sent back, ns. */
    public long longestBrakingNanos() {
        return accelerationPerSecond2 == 0 ? 0 : (long) Math.ceil(ratePerSecond / accelerationPerSecond2 * 1e9);
    }

    /** Whether one move of it is several straight pieces in a trace. */
    public boolean isInPieces() {
        return accelerationPerSecond2 > 0;
    }
}
