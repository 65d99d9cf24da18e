package dropline.harness.record;

import dropline.harness.stream.State;

/**
 * A state's time in the recording: from one state to the next it runs on by the stream's own time where both say it,
 * else by the clock. It never runs back.
 */
final class StateTime {
    /** Stands for a state that is older than the last one and belongs nowhere. */
    static final long LATE = -1;

    private static final long SECOND = 1_000_000_000L;

    /** A state may come so much too late and is then left out; further back, the stream has begun anew. */
    private static final long LATEST = SECOND;

    /** Own time may run ahead of the clock by so much from one state to the next; further, it was set. */
    private static final long FURTHEST = 60 * SECOND;

    private boolean begun;
    private long lastArrival;
    private boolean lastTimed;
    private long lastOwn;
    private long last;
    private long jumps;

    /** The time of a state that arrived then, ns from the first; or {@link #LATE}. */
    long of(State state, long arrival) {
        if (!begun) {
            begun = true;
            return settle(state, arrival, 0);
        }
        long byClock = Math.max(0, arrival - lastArrival);
        if (!state.timed() || !lastTimed) {
            return settle(state, arrival, byClock);
        }
        long own = state.timeNanos() - lastOwn;
        if (own < 0 && own > -LATEST) {
            return LATE;
        }
        boolean jumped = own < 0 || own > FURTHEST + byClock;
        jumps += jumped ? 1 : 0;
        return settle(state, arrival, jumped ? byClock : own);
    }

    private long settle(State state, long arrival, long step) {
        last += step;
        lastArrival = arrival;
        lastTimed = state.timed();
        lastOwn = state.timeNanos();
        return last;
    }

    /** How often the stream's own time jumped. */
    long jumps() {
        return jumps;
    }

    /** The last state's time, ns. */
    long last() {
        return last;
    }
}
