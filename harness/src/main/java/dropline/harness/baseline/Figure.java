package dropline.harness.baseline;

/**
 * A figure of a run that hardly hangs on its seed, so that a change of it means something. Of all of them less is
 * better but of {@link #UPDATES} and {@link #MOVES}, which the recording determines.
 */
public enum Figure {
    MEAN_CYCLE("mean-cycle", "mean round of polls", true, 0.001),
    TIMED_OUT("timed-out", "polls without an answer", false, 0),
    GAVE_UP("gave-up", "polls given up", false, 0),
    REPLY_GAP("reply-gap", "mean reply gap", true, 0.001),
    UPDATES("updates", "updates", false, 0),
    P50("p50", "half of the updates within", true, 0.01),
    P99("p99", "99 of 100 updates within", true, 0.01),
    MOVES("moves", "moves", false, 0),
    TOLD_P50("told-p50", "half of the moves told within", true, 0.01),
    TOLD_P99("told-p99", "99 of 100 moves told within", true, 0.01),
    LOST("lost", "lost steps", false, 0);

    private static final double LEAST_NANOS = 1_000;
    private static final double LEAST_COUNT = 0.5;

    private final String key;
    private final String words;
    private final boolean isTime;
    private final double grain;

    Figure(String key, String words, boolean isTime, double grain) {
        this.key = key;
        this.words = words;
        this.isTime = isTime;
        this.grain = grain;
    }

    /** As a file has it. */
    String key() {
        return key;
    }

    /** For people. */
    public String words() {
        return words;
    }

    /** Whether it is a time, ns; else a count. */
    public boolean isTime() {
        return isTime;
    }

    /** A spread that its own resolution brings about, however steady it seems. */
    double leastDeviation(double mean) {
        return isTime ? Math.max(LEAST_NANOS, grain * mean) : LEAST_COUNT;
    }

    /** Whether the recording alone determines it. */
    boolean isOfTheRecording() {
        return this == UPDATES || this == MOVES;
    }
}
