package dropline.harness.replay;

/**
 * How far a run may go. No real pit and no recording of a flight comes near; what does would not end in a person's
 * time.
 *
 * @param longestNanos simulated time, ns
 * @param mostEvents events of a segment's trace
 * @param mostEventsPerSecond events of a segment's trace in one simulated second; a pair at 4 Mbaud has 400,000
 *     characters in it
 */
public record RunLimit(long longestNanos, long mostEvents, long mostEventsPerSecond) {

    /** A day; 100 thousand million events; 20 million events a second. */
    public static final RunLimit USUAL = new RunLimit(86_400_000_000_000L, 100_000_000_000L, 20_000_000L);

    public RunLimit {
        if (longestNanos <= 0 || mostEvents <= 0 || mostEventsPerSecond <= 0) {
            throw new IllegalArgumentException("limits must be above 0: longest=" + longestNanos + " events="
                    + mostEvents + " perSecond=" + mostEventsPerSecond);
        }
    }
}
