package dropline.bus.bound;

/**
 * How often values come to wait at a segment's controller: all at once with a state, one by one to be sent again.
 *
 * @param periodNanos from one state to the next, ns; 0 where that is not known, and states may come at any time
 * @param jitterNanos by how much a state may be late, ns
 * @param refreshEveryNanos from one value that is sent again unchanged to the next, ns; 0 for never
 */
record Arrivals(long periodNanos, long jitterNanos, long refreshEveryNanos) {
    /** More often than anything here could count to. */
    private static final long ANY = 1_000_000;

    /**
     * @param periodNanos see above
     * @param values places in all queues of the segment
     */
    static Arrivals of(Timing timing, long periodNanos, int values) {
        long refresh = timing.segment().controller().refreshNanos();
        return new Arrivals(periodNanos, timing.arriveNanos(), values == 0 ? 0 : refresh / values);
    }

    /** Further states that arrive within so long after one, at most. */
    long statesAfter(long nanos) {
        return periodNanos == 0 ? ANY : (nanos + jitterNanos) / periodNanos;
    }

    /** Values sent again unchanged within so long, at most. */
    long refreshesWithin(long nanos) {
        return refreshEveryNanos == 0 ? 0 : nanos / refreshEveryNanos + 1;
    }

    /** Times that values come to wait within so long after one that came with a state, at most. */
    long after(long nanos) {
        return statesAfter(nanos) + refreshesWithin(nanos);
    }
}
