package dropline.harness.replay;

/**
 * How far a run may go. No recording of a flight comes near; what does would not end in a person's time.
 *
 * @param longestNanos simulated time, ns
 */
public record RunLimit(long longestNanos) {

    /** A day. */
    public static final RunLimit USUAL = new RunLimit(86_400_000_000_000L);

    public RunLimit {
        if (longestNanos <= 0) {
            throw new IllegalArgumentException("limits must be above 0: longest=" + longestNanos);
        }
    }
}
