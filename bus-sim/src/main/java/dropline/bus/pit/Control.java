package dropline.bus.pit;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Something a person moves. It travels as state: a position, or a count modulo 2^16, so that a lost or repeated reply
 * loses nothing that is still true.
 *
 * @param name unique in the pit
 * @param kind what it is
 * @param number number on the wire, 0..65535
 * @param debounceNanos how long a contact must hold still before the node believes it, ns
 * @param bounceNanos longest time its contact bounces after a move, ns
 * @param deadBand axis: moves up to this many units are not reported; lever: how far beyond the middle between two
 *     detents it must be for the next one; else 0
 * @param positions selector, three-way toggle: where it can stand, and what lies between; else {@link Positions#NONE}
 * @param matrix key matrix: how its keys are wired; else null
 * @param detents lever: where it rests, by ascending position; else empty
 */
public record Control(
        String name,
        Kind kind,
        int number,
        long debounceNanos,
        long bounceNanos,
        int deadBand,
        Positions positions,
        @Nullable Matrix matrix,
        List<Detent> detents) {

    /** What a control is. */
    public enum Kind {
        /** Stays where it is put: position. */
        TOGGLE(true, false),
        /** Counted when pressed, modulo 2^16. */
        BUTTON(true, true),
        /** Counted on its node, modulo 2^16. */
        ENCODER(false, true),
        /** Position with a dead band. */
        AXIS(false, false),
        /** Position 0..n-1; its contacts break before they make. */
        SELECTOR(true, false),
        /** Position 0, 1, 2 with 1 the centre, which lies between the two others. */
        THREE_WAY_TOGGLE(true, false),
        /** Springs back to position 0; 1 and, if it has one, 2 are its held sides. */
        HELD_TOGGLE(true, false),
        /** Position 1 while held, 0 when let go. */
        HELD_BUTTON(true, false),
        /** Up to 16 keys as one state: bit (row x columns + column) is set while that key is down. */
        KEY_MATRIX(true, false),
        /** Position of the detent it rests in. */
        LEVER(false, false);

        private final boolean contact;
        private final boolean counts;

        Kind(boolean contact, boolean counts) {
            this.contact = contact;
            this.counts = counts;
        }

        /** Whether it is made of contacts, which bounce and are debounced. */
        public boolean isContact() {
            return contact;
        }

        /** Whether it travels as a count, else as a position. */
        public boolean counts() {
            return counts;
        }

        /** Whether it goes back by itself when let go, so that a position that was never told is lost. */
        public boolean springsBack() {
            return this == HELD_TOGGLE || this == HELD_BUTTON || this == KEY_MATRIX;
        }
    }

    /**
     * Positions 0..n-1, and what the contacts are on the way from one to another: open, for a time, during which the
     * node's program reads a value of its own.
     *
     * @param count how many; 0 of what has no such positions
     * @param openNanos how long the contacts are open in between, ns
     * @param openValue what the program reads then; of a three-way toggle the centre
     */
    public record Positions(int count, long openNanos, int openValue) {
        /** Of what has no such positions. */
        public static final Positions NONE = new Positions(0, 0, 0);

        public Positions {
            if (count < 0 || count == 1 || openNanos < 0 || openValue < 0 || openValue > 0xFFFF) {
                throw new IllegalArgumentException("there are two or more positions, open for 0 or longer, when they"
                        + " read 0..65535: count=" + count + " open=" + openNanos + " value=" + openValue);
            }
        }

        /** The position meant by a recorded one: held between the first and the last. */
        public int held(int position) {
            return Math.max(0, Math.min(count - 1, position));
        }
    }

    /**
     * How a matrix of keys is wired and scanned, row after row at equal distances.
     *
     * @param scanNanos from one scan of a row to its next, ns
     * @param diodes whether each key has one; without, keys held at three corners of a rectangle show its fourth
     */
    public record Matrix(int rows, int columns, long scanNanos, boolean diodes) {
        public Matrix {
            if (rows < 1 || columns < 1 || rows * columns > 16 || scanNanos <= 0) {
                throw new IllegalArgumentException("a key matrix has 1..16 keys and is scanned: rows=" + rows
                        + " columns=" + columns + " scan=" + scanNanos);
            }
        }

        /** What a scan finds while these keys are down: those, and where there are no diodes their ghosts. */
        public int seen(int down) {
            int seen = down;
            boolean grew = !diodes;
            while (grew) {
                int before = seen;
                for (int one = 0; one < rows; one++) {
                    for (int other = 0; other < rows; other++) {
                        if ((row(seen, one) & row(seen, other)) != 0) {
                            seen |= row(seen, other) << (one * columns);
                        }
                    }
                }
                grew = seen != before;
            }
            return seen;
        }

        /** Every key down. */
        public int allKeys() {
            return (1 << (rows * columns)) - 1;
        }

        private int row(int keys, int row) {
            return keys >> (row * columns) & ((1 << columns) - 1);
        }

        /** When the last of the rows in which two states differ has been scanned, at or after an instant, ns. */
        public long scannedNanos(int before, int after, long atNanos) {
            long last = atNanos;
            for (int row = 0; row < rows; row++) {
                if (row(before, row) != row(after, row)) {
                    long phase = scanNanos * row / rows;
                    long scans = atNanos <= phase ? 0 : (atNanos - phase + scanNanos - 1) / scanNanos;
                    last = Math.max(last, phase + scans * scanNanos);
                }
            }
            return last;
        }
    }

    /** A place in which a lever rests. */
    public record Detent(String name, int position) {}

    /** One without positions, matrix or detents. */
    public Control(String name, Kind kind, int number, long debounceNanos, long bounceNanos, int deadBand) {
        this(name, kind, number, debounceNanos, bounceNanos, deadBand, Positions.NONE, null, List.of());
    }

    public Control {
        detents = List.copyOf(detents);
        if (debounceNanos < 0 || bounceNanos < 0 || deadBand < 0) {
            throw new IllegalArgumentException("times and dead band must not be negative: debounce=" + debounceNanos
                    + " bounce=" + bounceNanos + " deadBand=" + deadBand);
        }
        if ((matrix != null) != (kind == Kind.KEY_MATRIX) || (detents.size() > 1) != (kind == Kind.LEVER)) {
            throw new IllegalArgumentException("a key matrix has rows and columns, a lever has detents: kind=" + kind
                    + " matrix=" + matrix + " detents=" + detents);
        }
        if ((positions.count() > 0) != (kind == Kind.SELECTOR || kind == Kind.THREE_WAY_TOGGLE)) {
            throw new IllegalArgumentException(
                    "a selector and a three-way toggle have positions: kind=" + kind + " positions=" + positions);
        }
        for (int i = 1; i < detents.size(); i++) {
            if (detents.get(i).position() - detents.get(i - 1).position() <= 2 * deadBand) {
                throw new IllegalArgumentException("detents must ascend by more than two dead bands: deadBand="
                        + deadBand + " detents=" + detents);
            }
        }
    }

    /** Longest time from a contact's move until its node believes it, ns; 0 of what is read at once. */
    public long longestBelievingNanos() {
        if (!kind.isContact()) {
            return 0;
        }
        return positions.openNanos() + bounceNanos + debounceNanos + (matrix == null ? 0 : matrix.scanNanos());
    }

    /**
     * The detent a lever falls into when it is pushed to a position: the nearest, unless the one it comes from is not
     * left behind by more than the dead band.
     */
    public int detent(int from, int pushedTo) {
        int nearest = from;
        for (Detent detent : detents) {
            if (Math.abs(pushedTo - detent.position()) < Math.abs(pushedTo - nearest)) {
                nearest = detent.position();
            }
        }
        return Math.abs(pushedTo - nearest) + 2 * deadBand < Math.abs(pushedTo - from) ? nearest : from;
    }
}
