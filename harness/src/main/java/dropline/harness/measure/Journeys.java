package dropline.harness.measure;

/**
 * When values reached the stations on their way to one slot: queued, carried, applied. The latest {@link #CAPACITY} of
 * each are remembered.
 */
final class Journeys {
    static final int CAPACITY = 64;

    private static final int MASK = CAPACITY - 1;

    private final int[] queuedSerials = new int[CAPACITY];
    private final long[] queuedNanos = new long[CAPACITY];
    private final int[] carriedSerials = new int[CAPACITY];
    private final long[] carriedNanos = new long[CAPACITY];
    private final int[] appliedSerials = new int[CAPACITY];
    private final long[] carriedOfApplied = new long[CAPACITY];
    private final long[] heardOfApplied = new long[CAPACITY];
    private final long[] appliedNanos = new long[CAPACITY];
    private int queuedCount;
    private int carriedCount;
    private int appliedCount;
    private int latestApplied;

    void queued(long atNanos, int serial) {
        queuedSerials[queuedCount & MASK] = serial;
        queuedNanos[queuedCount++ & MASK] = atNanos;
    }

    void carried(long atNanos, int serial) {
        carriedSerials[carriedCount & MASK] = serial;
        carriedNanos[carriedCount++ & MASK] = atNanos;
    }

    /** A value applied again is not a new one. */
    void applied(long atNanos, int serial, long heardAtNanos) {
        if (serial <= latestApplied) {
            return;
        }
        latestApplied = serial;
        int i = appliedCount++ & MASK;
        appliedSerials[i] = serial;
        carriedOfApplied[i] = lastCarried(serial, heardAtNanos);
        heardOfApplied[i] = heardAtNanos;
        appliedNanos[i] = atNanos;
    }

    /** The node restarted: a value applied again is a new one. */
    void forget() {
        latestApplied = 0;
    }

    /** The last frame with this serial that began before it was heard. */
    private long lastCarried(int serial, long beforeNanos) {
        for (int n = carriedCount - 1; n >= 0 && carriedCount - n <= CAPACITY; n--) {
            if (carriedSerials[n & MASK] == serial && carriedNanos[n & MASK] < beforeNanos) {
                return carriedNanos[n & MASK];
            }
        }
        return SignalLog.NEVER;
    }

    /** When the controller first had this change or a newer one; the search ends at the first older one. */
    long queuedNanos(int serial) {
        long found = SignalLog.NEVER;
        for (int n = queuedCount - 1; n >= 0 && queuedCount - n <= CAPACITY; n--) {
            if (queuedSerials[n & MASK] < serial) {
                break;
            }
            found = queuedNanos[n & MASK];
        }
        return found;
    }

    /** Frames that carried this slot's signal at or after an instant. */
    int timesCarriedSince(long nanos) {
        int times = 0;
        for (int n = carriedCount - 1; n >= 0 && carriedCount - n <= CAPACITY && carriedNanos[n & MASK] >= nanos; n--) {
            times++;
        }
        return times;
    }

    /**
     * Puts the instants at which this serial was carried, heard and applied into {@code cuts} from {@code first} on.
     */
    void cuts(int serial, long[] cuts, int first) {
        for (int n = appliedCount - 1; n >= 0 && appliedCount - n <= CAPACITY; n--) {
            int i = n & MASK;
            if (appliedSerials[i] == serial) {
                cuts[first] = carriedOfApplied[i];
                cuts[first + 1] = heardOfApplied[i];
                cuts[first + 2] = appliedNanos[i];
                return;
            }
        }
        cuts[first] = SignalLog.NEVER;
        cuts[first + 1] = SignalLog.NEVER;
        cuts[first + 2] = SignalLog.NEVER;
    }
}
