package dropline.harness.replay;

/** Hears how far a replay has come. */
@FunctionalInterface
public interface Progress {
    /** Nobody listens. */
    Progress NONE = (reachedNanos, share) -> {};

    /**
     * Called after each stretch, on the thread that runs the replay.
     *
     * @param reachedNanos how far the run has come, ns
     * @param share of all that is to be done, 0..1
     */
    void reached(long reachedNanos, double share);
}
