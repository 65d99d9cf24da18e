package dropline.harness.measure;

import dropline.bus.pit.Control.Kind;
import dropline.bus.pit.Layout;

/**
 * The figures of one control. Control latency runs from the oldest move the host does not know to its being told that
 * or a newer one; positions and counts travel as state, so the newer covers the older. Not waited for: a press that its
 * node let pass as too short, a step it did not notice (lost steps both), a toggle back where its node believes it, an
 * axis still inside its dead band. What springs back travels as a position: a press let go before its node believed it,
 * or before the host was told, is a lost step too. What a node believes under a serial that no move had is spurious:
 * counted, not timed.
 */
public final class ControlMeasure {
    private static final int CAPACITY = 256;
    private static final int MASK = CAPACITY - 1;
    private static final long STILL_YOUNG_NANOS = 1_000_000_000L;

    private final Layout.ControlPlace place;
    private final Kind kind;
    private final Times latency = new Times();
    private final int[] serials = new int[CAPACITY];
    private final long[] movedNanos = new long[CAPACITY];
    private final int[] values = new int[CAPACITY];
    private final boolean[] standing = new boolean[CAPACITY];

    private int latest;
    private int sampled;
    private int told;
    private int toldValue;
    private int believed;
    private boolean knowsBelieved;
    private int oldest;
    private long oldestNanos;
    private long forgotten;
    private long moves;
    private long lostSteps;
    private long spurious;
    private long openNanos;

    ControlMeasure(Layout.ControlPlace place) {
        this.place = place;
        kind = place.control().kind();
    }

    void moved(long atNanos, int serial, int value) {
        moves++;
        makeRoom(serial);
        int i = serial & MASK;
        serials[i] = serial;
        movedNanos[i] = atNanos;
        values[i] = value;
        standing[i] = true;
        if (oldest == 0) {
            oldest = serial;
            oldestNanos = atNanos;
        }
        dropWhatIsBelieved();
    }

    /** Goes on to a serial; those that were left out belong to nobody's move. */
    private void makeRoom(int serial) {
        for (int next = Math.max(latest + 1, serial - MASK); next <= serial; next++) {
            int i = next & MASK;
            if (serials[i] > told && standing[i] && isStep(values[i])) {
                forgotten++;
            }
            serials[i] = 0;
            standing[i] = false;
        }
        latest = Math.max(latest, serial);
    }

    private boolean wasMoved(int serial) {
        return serials[serial & MASK] == serial;
    }

    /** Moves after the last sample that ended where the node already believes the control to be need not be told. */
    private void dropWhatIsBelieved() {
        if (kind.counts() || !knowsBelieved || latest <= sampled) {
            return;
        }
        long away = Math.abs((long) values[latest & MASK] - believed);
        if (away <= place.control().deadBand()) {
            lostSteps += pressesLetGo(sampled, believed, latest);
            drop(sampled + 1, latest);
            if (oldest > sampled) {
                oldest = 0;
            }
        }
    }

    /**
     * Of what springs back: how often it was pressed after one serial, where its value was known, and let go by
     * another. A position says nothing of that any more. Every side or key has a bit of its own.
     */
    private int pressesLetGo(int after, int known, int by) {
        int presses = 0;
        int before = known;
        for (int serial = Math.max(after + 1, latest - MASK); kind.springsBack() && serial < by; serial++) {
            int i = serial & MASK;
            if (wasMoved(serial) && standing[i]) {
                presses += Integer.bitCount(values[i] & ~before & ~values[by & MASK]);
                before = values[i];
            }
        }
        return presses;
    }

    private void drop(int from, int to) {
        for (int serial = Math.max(from, latest - MASK); serial <= to; serial++) {
            standing[serial & MASK] = false;
        }
    }

    void sampled(int serial) {
        if (serial <= sampled) {
            return;
        }
        if (serial > latest) {
            makeRoom(serial);
        }
        boolean moved = wasMoved(serial);
        spurious += moved ? 0 : 1;
        if (kind.counts()) {
            letPass(serial);
        }
        sampled = serial;
        knowsBelieved = moved;
        believed = values[serial & MASK];
        dropWhatIsBelieved();
    }

    /** What came before this serial and was not sampled never will be. */
    private void letPass(int serial) {
        for (int passed = Math.max(sampled + 1, latest - MASK); passed < serial; passed++) {
            lostSteps += wasMoved(passed) && isStep(values[passed & MASK]) ? 1 : 0;
        }
        drop(sampled + 1, serial - 1);
        if (oldest > sampled && oldest < serial) {
            findOldest(serial);
        }
    }

    private void findOldest(int from) {
        oldest = 0;
        for (int next = Math.max(from, latest - MASK); next <= latest && oldest == 0; next++) {
            if (standing[next & MASK]) {
                oldest = next;
                oldestNanos = movedNanos[next & MASK];
            }
        }
    }

    void told(long atNanos, int serial) {
        if (serial <= told) {
            return;
        }
        if (wasMoved(serial)) {
            lostSteps += pressesLetGo(told, toldValue, serial);
            toldValue = values[serial & MASK];
        }
        told = serial;
        forgotten = 0;
        if (oldest != 0 && serial >= oldest) {
            latency.add(atNanos - oldestNanos);
            findOldest(serial + 1);
        }
    }

    void ended(long atNanos) {
        lostSteps += forgotten;
        for (int serial = Math.max(told + 1, latest - MASK); serial <= latest; serial++) {
            int i = serial & MASK;
            if (standing[i] && isStep(values[i]) && movedNanos[i] <= atNanos - STILL_YOUNG_NANOS) {
                lostSteps++;
            }
        }
        openNanos = oldest == 0 ? 0 : atNanos - oldestNanos;
    }

    /** Letting a button go is no step. */
    private boolean isStep(int value) {
        return kind != Kind.BUTTON || value != 0;
    }

    public Layout.ControlPlace place() {
        return place;
    }

    public Times latency() {
        return latency;
    }

    public long moves() {
        return moves;
    }

    /**
     * Presses and steps that never reached the host, and moves at least 1 s old at the end of which the host was never
     * told.
     */
    public long lostSteps() {
        return lostSteps;
    }

    /** Changes the node believed that nobody had made. */
    public long spurious() {
        return spurious;
    }

    /** How long the oldest move not told had waited at the end, ns; 0 if the host knew all. */
    public long openNanos() {
        return openNanos;
    }
}
