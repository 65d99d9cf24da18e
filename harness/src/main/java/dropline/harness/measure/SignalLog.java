package dropline.harness.measure;

import dropline.bus.pit.Signal;

/**
 * The latest changes of one signal, by serial: what it became, when, when the host sent that, and the newest state
 * instant at which it was so. What is older than {@link #CAPACITY} changes is forgotten.
 */
final class SignalLog {
    static final int CAPACITY = 512;

    /** In place of an instant: not yet, or forgotten. */
    static final long NEVER = -1;

    private static final int MASK = CAPACITY - 1;

    final Signal signal;
    private final int[] serials = new int[CAPACITY];
    private final long[] values = new long[CAPACITY];
    private final long[] changed = new long[CAPACITY];
    private final long[] sent = new long[CAPACITY];
    private final long[] stateAt = new long[CAPACITY];
    private final boolean[] undone = new boolean[CAPACITY];
    private int latest;
    private int latestSent;
    private long latestSentValue;
    private long missed;

    SignalLog(Signal signal) {
        this.signal = signal;
    }

    /** {@code lastStateNanos} is the last state instant before this change, or {@link #NEVER}. */
    void changed(long atNanos, int serial, long value, long lastStateNanos) {
        if (latest > 0) {
            stateAt[latest & MASK] = stateAtLatest(lastStateNanos);
        }
        int i = serial & MASK;
        serials[i] = serial;
        values[i] = value;
        changed[i] = atNanos;
        sent[i] = NEVER;
        stateAt[i] = NEVER;
        undone[i] = false;
        latest = serial;
    }

    boolean hasUnsent() {
        return latest > latestSent;
    }

    /** The host sends what it has; returns how many changes had been undone by then, and so need not be shown. */
    int sent(long atNanos) {
        boolean isUndone = latestSent > 0 && value(latest) == latestSentValue;
        int count = latest - latestSent;
        for (int serial = Math.max(latestSent + 1, latest - MASK); serial <= latest; serial++) {
            sent[serial & MASK] = atNanos;
            undone[serial & MASK] = isUndone;
        }
        latestSent = latest;
        latestSentValue = value(latest);
        if (isUndone) {
            missed++;
        }
        return isUndone ? count : 0;
    }

    int latest() {
        return latest;
    }

    int latestSent() {
        return latestSent;
    }

    /** Times the value went away and came back between two states. */
    long missed() {
        return missed;
    }

    boolean knows(int serial) {
        return serial > 0 && serials[serial & MASK] == serial;
    }

    long value(int serial) {
        return values[serial & MASK];
    }

    long changedNanos(int serial) {
        return knows(serial) ? changed[serial & MASK] : NEVER;
    }

    long sentNanos(int serial) {
        return knows(serial) ? sent[serial & MASK] : NEVER;
    }

    /** The oldest change after {@code serial} that still needs showing, as far as remembered; 0 if there is none. */
    int firstStandingAfter(int serial) {
        for (int next = Math.max(serial + 1, latest - MASK); next <= latest; next++) {
            if (!undone[next & MASK]) {
                return next;
            }
        }
        return 0;
    }

    /** How many changes after {@code serial} were undone before they were sent, as far as remembered. */
    int undoneAfter(int serial) {
        int count = 0;
        for (int next = Math.max(serial + 1, latest - MASK); next <= latest; next++) {
            count += undone[next & MASK] ? 1 : 0;
        }
        return count;
    }

    /** How many changes after {@code serial} happened later than {@code nanos}, as far as remembered. */
    int youngerThan(long nanos, int serial) {
        int count = 0;
        for (int next = latest; next > serial && latest - next < CAPACITY && changed[next & MASK] > nanos; next--) {
            count++;
        }
        return count;
    }

    /** The newest state instant at which the value was that of {@code serial}; {@link #NEVER} if none is remembered. */
    long newestStateWithValueOf(int serial, long lastStateNanos) {
        if (!knows(serial)) {
            return NEVER;
        }
        long value = value(serial);
        for (int newer = latest; newer >= serial; newer--) {
            long at = newer == latest ? stateAtLatest(lastStateNanos) : stateAt[newer & MASK];
            if (at != NEVER && value(newer) == value) {
                return at;
            }
        }
        return NEVER;
    }

    private long stateAtLatest(long lastStateNanos) {
        return lastStateNanos >= changed[latest & MASK] ? lastStateNanos : NEVER;
    }
}
