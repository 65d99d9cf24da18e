package dropline.harness.measure;

import dropline.bus.pit.Signal;
import java.util.Arrays;

/**
 * The latest changes of one signal, by serial: what it became, when, when the host sent that, and the newest state
 * instant at which it was so. It has room for the changes that somebody may still ask for, up to {@link #CAPACITY};
 * what is older is forgotten.
 */
final class SignalLog {
    static final int CAPACITY = 512;

    /** In place of an instant: not yet, or forgotten. */
    static final long NEVER = -1;

    private static final int FIRST_ROOM = 8;

    /** A change's words, in one line of the processor's cache: its serial, and these. */
    private static final int WORDS = 8;

    private static final int VALUE = 1;
    private static final int CHANGED = 2;
    private static final int SENT = 3;
    private static final int STATE = 4;
    private static final int UNDONE = 5;

    final Signal signal;
    private long[] words = new long[FIRST_ROOM * WORDS];
    private int mask = FIRST_ROOM - 1;
    private int latest;
    private int latestSent;
    private long latestSentValue;
    private long missed;

    SignalLog(Signal signal) {
        this.signal = signal;
    }

    /**
     * @param lastStateNanos the last state instant before this change, or {@link #NEVER}
     * @param shown the oldest change that any slot shows, which is still asked for; 0 if one shows none
     */
    void changed(long atNanos, int serial, long value, long lastStateNanos, int shown) {
        if (latest > 0) {
            words[of(latest) + STATE] = stateAtLatest(lastStateNanos);
        }
        while (serial - shown > mask && mask < CAPACITY - 1) {
            grow();
        }
        int i = of(serial);
        words[i] = serial;
        words[i + VALUE] = value;
        words[i + CHANGED] = atNanos;
        words[i + SENT] = NEVER;
        words[i + STATE] = NEVER;
        words[i + UNDONE] = 0;
        latest = serial;
    }

    private void grow() {
        long[] before = words;
        words = Arrays.copyOf(before, before.length * 2);
        mask = 2 * mask + 1;
        for (int i = 0; i < before.length; i += WORDS) {
            System.arraycopy(before, i, words, of((int) before[i]), WORDS);
        }
    }

    private int of(int serial) {
        return (serial & mask) * WORDS;
    }

    boolean hasUnsent() {
        return latest > latestSent;
    }

    /** The host sends what it has; returns how many changes had been undone by then, and so need not be shown. */
    int sent(long atNanos) {
        boolean isUndone = latestSent > 0 && value(latest) == latestSentValue;
        int count = latest - latestSent;
        for (int serial = Math.max(latestSent + 1, latest - mask); serial <= latest; serial++) {
            words[of(serial) + SENT] = atNanos;
            words[of(serial) + UNDONE] = isUndone ? 1 : 0;
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
        return serial > 0 && words[of(serial)] == serial;
    }

    long value(int serial) {
        return words[of(serial) + VALUE];
    }

    long changedNanos(int serial) {
        return knows(serial) ? words[of(serial) + CHANGED] : NEVER;
    }

    long sentNanos(int serial) {
        return knows(serial) ? words[of(serial) + SENT] : NEVER;
    }

    /** The oldest change after {@code serial} that still needs showing, as far as remembered; 0 if there is none. */
    int firstStandingAfter(int serial) {
        for (int next = Math.max(serial + 1, latest - mask); next <= latest; next++) {
            if (words[of(next) + UNDONE] == 0) {
                return next;
            }
        }
        return 0;
    }

    /** How many changes after {@code serial} were undone before they were sent, as far as remembered. */
    int undoneAfter(int serial) {
        int count = 0;
        for (int next = Math.max(serial + 1, latest - mask); next <= latest; next++) {
            count += (int) words[of(next) + UNDONE];
        }
        return count;
    }

    /** How many changes after {@code serial} happened later than {@code nanos}, as far as remembered. */
    int youngerThan(long nanos, int serial) {
        int count = 0;
        for (int next = latest; next > serial && latest - next <= mask && words[of(next) + CHANGED] > nanos; next--) {
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
            long at = newer == latest ? stateAtLatest(lastStateNanos) : words[of(newer) + STATE];
            if (at != NEVER && value(newer) == value) {
                return at;
            }
        }
        return NEVER;
    }

    private long stateAtLatest(long lastStateNanos) {
        return lastStateNanos >= words[of(latest) + CHANGED] ? lastStateNanos : NEVER;
    }
}
