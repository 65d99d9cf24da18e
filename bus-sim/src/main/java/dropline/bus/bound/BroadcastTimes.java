package dropline.bus.bound;

import dropline.bus.bound.PollTimes.Span;

/**
 * How long broadcasts take, and what waits for them. Values go out in bursts; after a burst a poll comes first, and no
 * more than one round of values and one frame goes out between two polls, so that neither starves the other.
 */
final class BroadcastTimes {
    private final Timing timing;
    private final StateFrames state;
    private final Arrivals arrivals;
    private final long longestTryNanos;
    private final long roundNanos;
    private final long frameNanos;
    private final long singleNanos;
    private final long singlesNanos;

    BroadcastTimes(Timing timing, StateFrames state, Arrivals arrivals, long longestTryNanos) {
        this.timing = timing;
        this.state = state;
        this.arrivals = arrivals;
        this.longestTryNanos = longestTryNanos;
        roundNanos = nanos(state.chars(), state.frames());
        frameNanos = nanos(state.longestChars(), 1);
        singleNanos = nanos(state.longestSingleChars(), 1);
        singlesNanos = nanos(state.singleChars(), state.slots());
    }

    private long nanos(long chars, long frames) {
        return timing.chars(chars, frames) + frames * timing.aroundBroadcastNanos();
    }

    /** From a value's coming to wait to the first start bit of the broadcast with it, at most, ns. */
    long waitNanos() {
        long before = -1;
        long wait = 0;
        while (wait != before) {
            before = wait;
            long more = arrivals.after(wait);
            long ahead = state.ahead(more);
            long tries = state.areFull() ? Math.min(more, ahead) + 1 : ahead + 1;
            wait = frameNanos + tries * longestTryNanos + aheadNanos(ahead, more) + timing.prepareNanos();
        }
        return wait;
    }

    private long aheadNanos(long ahead, long more) {
        if (ahead == 0) {
            return 0;
        }
        return state.areFull() ? roundNanos : Math.min(roundNanos + more * frameNanos, singlesNanos);
    }

    /** How long some tries take with all broadcasts that may come between them, at most, ns. */
    long withPollsNanos(Span polls) {
        if (state.slots() == 0) {
            return polls.nanos();
        }
        long most = polls.tries() * (singlesNanos + frameNanos);
        long before = -1;
        long taken = polls.nanos();
        while (taken != before) {
            before = taken;
            taken = polls.nanos() + Math.min(most, sentWithinNanos(before));
        }
        return taken;
    }

    /** What waits at first, then what arrives. */
    private long sentWithinNanos(long nanos) {
        long rounds = 2 + arrivals.statesAfter(nanos);
        long round = roundNanos + (state.ahead(0) > 0 ? frameNanos : 0);
        return rounds * round + arrivals.refreshesWithin(nanos) * singleNanos;
    }

    /** The longest broadcast, from its first start bit to its being heard, ns. */
    long wireNanos() {
        return timing.frame(state.longestChars()) - timing.afterHearingNanos();
    }

    boolean isNone() {
        return state.isNone();
    }
}
