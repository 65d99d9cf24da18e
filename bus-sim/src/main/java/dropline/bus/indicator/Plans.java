package dropline.bus.indicator;

import java.util.Arrays;

/** What slots are to have and to show, in a line sorted by time; few at once. The next one is the line's last. */
final class Plans {
    /** In place of an instant: nothing is planned. */
    static final long NEVER = Long.MAX_VALUE;

    private static final long SHOWS = -1;

    private long[] nanos = new long[16];
    private int[] slots = new int[16];
    private int[] serials = new int[16];
    private long[] values = new long[16];
    private long[] heard = new long[16];
    private int count;

    /** A slot's node is to have a value that it heard at an instant. */
    void apply(long atNanos, int slot, int serial, long heardNanos) {
        insert(atNanos, slot, serial, 0, heardNanos);
    }

    /** A slot is to show a value at an instant. */
    void show(long atNanos, int slot, int serial, long value) {
        insert(atNanos, slot, serial, value, SHOWS);
    }

    private void insert(long atNanos, int slot, int serial, long value, long heardNanos) {
        if (count == nanos.length) {
            nanos = Arrays.copyOf(nanos, count * 2);
            slots = Arrays.copyOf(slots, count * 2);
            serials = Arrays.copyOf(serials, count * 2);
            values = Arrays.copyOf(values, count * 2);
            heard = Arrays.copyOf(heard, count * 2);
        }
        int i = count++;
        while (i > 0 && nanos[i - 1] <= atNanos) {
            move(i - 1, i);
            i--;
        }
        put(i, atNanos, slot, serial, value, heardNanos);
    }

    /** When the next one is due, ns, or {@link #NEVER}. */
    long nextNanos() {
        return count == 0 ? NEVER : nanos[count - 1];
    }

    /** Whether the next one is a value to be shown, and not one to be had. */
    boolean nextShows() {
        return heard[count - 1] == SHOWS;
    }

    int nextSlot() {
        return slots[count - 1];
    }

    int nextSerial() {
        return serials[count - 1];
    }

    long nextValue() {
        return values[count - 1];
    }

    long nextHeardNanos() {
        return heard[count - 1];
    }

    /** The next one has happened. */
    void pass() {
        count--;
    }

    /** All that a slot was to have and to show comes to nothing. */
    void forget(int slot) {
        int kept = 0;
        for (int i = 0; i < count; i++) {
            if (slots[i] != slot) {
                move(i, kept++);
            }
        }
        count = kept;
    }

    private void move(int from, int to) {
        put(to, nanos[from], slots[from], serials[from], values[from], heard[from]);
    }

    private void put(int at, long atNanos, int slot, int serial, long value, long heardNanos) {
        nanos[at] = atNanos;
        slots[at] = slot;
        serials[at] = serial;
        values[at] = value;
        heard[at] = heardNanos;
    }
}
