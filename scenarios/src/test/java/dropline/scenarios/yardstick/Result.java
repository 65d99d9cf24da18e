package dropline.scenarios.yardstick;

/**
 * What one model says of the reference bus.
 *
 * @param frames how many frames were on the wire
 * @param latencyMeanNanos mean update latency over all lamps
 * @param latency99Nanos 99 of 100 updates were no slower
 * @param cycleMeanNanos mean poll cycle
 */
record Result(long frames, double latencyMeanNanos, double latency99Nanos, double cycleMeanNanos) {
    /** Whether each figure of another model is within this share of ours. */
    boolean agrees(Result other, double share) {
        return near(frames, other.frames, share)
                && near(latencyMeanNanos, other.latencyMeanNanos, share)
                && near(latency99Nanos, other.latency99Nanos, share)
                && near(cycleMeanNanos, other.cycleMeanNanos, share);
    }

    private static boolean near(double one, double other, double share) {
        return Math.abs(one - other) <= share * one;
    }
}
