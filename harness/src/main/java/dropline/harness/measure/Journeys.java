package dropline.harness.measure;

/**
 * When values reached the stations on their way to one slot: queued, carried, applied. The latest {@link #CAPACITY} of
 * each are remembered.
 */
final class Journeys {
    static final int CAPACITY = 64;

    private static final int MASK = CAPACITY - 1;

    /** A serial and an instant. */
    private static final int PAIR = 2;

    /** A serial, and when that was carried, heard and applied. */
    private static final int FOUR = 4;

    private static final int HEARD = 2;
    private static final int APPLIED = 3;

    private final long[] queued = new long[CAPACITY * PAIR];
    private final long[] carried = new long[CAPACITY * PAIR];
    private final long[] applied = new long[CAPACITY * FOUR];
    private int queuedCount;
    private int carriedCount;
    private int appliedCount;
    private int latestApplied;

    void queued(long atNanos, int serial) {
        int i = pair(queuedCount++);
        queued[i] = serial;
        queued[i + 1] = atNanos;
    }

    void carried(long atNanos, int serial) {
        int i = pair(carriedCount++);
        carried[i] = serial;
        carried[i + 1] = atNanos;
    }

    private static int pair(int count) {
        return (count & MASK) * PAIR;
    }

    private static int four(int count) {
        return (count & MASK) * FOUR;
    }

    /** A value applied again is not a new one. */
    void applied(long atNanos, int serial, long heardAtNanos) {
        if (serial <= latestApplied) {
            return;
        }
        latestApplied = serial;
        int i = four(appliedCount++);
        applied[i] = serial;
        applied[i + 1] = lastCarried(serial, heardAtNanos);
        applied[i + HEARD] = heardAtNanos;
        applied[i + APPLIED] = atNanos;
    }

    /** The node restarted: a value applied again is a new one. */
    void forget() {
        latestApplied = 0;
    }

    /** The last frame with this serial that began before it was heard. */
    private long lastCarried(int serial, long beforeNanos) {
        for (int n = carriedCount - 1; n >= 0 && carriedCount - n <= CAPACITY; n--) {
            if (carried[pair(n)] == serial && carried[pair(n) + 1] < beforeNanos) {
                return carried[pair(n) + 1];
            }
        }
        return SignalLog.NEVER;
    }

    /** When the controller first had this change or a newer one; the search ends at the first older one. */
    long queuedNanos(int serial) {
        long found = SignalLog.NEVER;
        for (int n = queuedCount - 1; n >= 0 && queuedCount - n <= CAPACITY; n--) {
            if (queued[pair(n)] < serial) {
                break;
            }
            found = queued[pair(n) + 1];
        }
        return found;
    }

    /** Frames that carried this slot's signal at or after an instant. */
    int timesCarriedSince(long nanos) {
        int times = 0;
        for (int n = carriedCount - 1; n >= 0 && carriedCount - n <= CAPACITY && carried[pair(n) + 1] >= nanos; n--) {
            times++;
        }
        return times;
    }

    /**
     * Puts the instants at which this serial was carried, heard and applied into {@code cuts} from {@code first} on.
     */
    void cuts(int serial, long[] cuts, int first) {
        for (int n = appliedCount - 1; n >= 0 && appliedCount - n <= CAPACITY; n--) {
            int i = four(n);
            if (applied[i] == serial) {
                cuts[first] = applied[i + 1];
                cuts[first + 1] = applied[i + HEARD];
                cuts[first + 2] = applied[i + APPLIED];
                return;
            }
        }
        cuts[first] = SignalLog.NEVER;
        cuts[first + 1] = SignalLog.NEVER;
        cuts[first + 2] = SignalLog.NEVER;
    }
}
