package dropline.bus.host;

import java.util.Arrays;

/**
 * A stretch of a recording in columns, filled by who reads it and then read by every segment; reused block after block,
 * so that memory does not grow with a recording's length. Times never run backwards.
 *
 * <p>A <em>row</em> is one recorded instant with the changes seen at it: only signals whose quantised value differs
 * from the last row's. The first row of a recording holds every signal that it knows. A row without changes is still a
 * state instant when states go out as recorded. A <em>move</em> is a control moved by a person.
 */
public final class StateBlock {
    private long[] rowNanos = new long[64];
    private int[] rowEnd = new int[64];
    private int rows;
    private int[] signals = new int[1024];
    private long[] values = new long[1024];
    private int changes;
    private long[] moveNanos = new long[16];
    private int[] moveControl = new int[16];
    private int[] moveValue = new int[16];
    private int moves;

    /** Empties the block for its next use. */
    public void clear() {
        rows = 0;
        changes = 0;
        moves = 0;
    }

    /** Forgets the moves: real controls move by themselves. */
    public void dropMoves() {
        moves = 0;
    }

    /** Begins a row; the changes added next belong to it. */
    public void addRow(long atNanos) {
        if (rows > 0 && atNanos < rowNanos[rows - 1]) {
            throw new IllegalArgumentException(
                    "rows must not run backwards: atNanos=" + atNanos + " after=" + rowNanos[rows - 1]);
        }
        if (rows == rowNanos.length) {
            rowNanos = Arrays.copyOf(rowNanos, rows * 2);
            rowEnd = Arrays.copyOf(rowEnd, rows * 2);
        }
        rowNanos[rows] = atNanos;
        rowEnd[rows++] = changes;
    }

    /** Adds a change to the row begun last. {@code signal} is the pit's index, the value in units of its resolution. */
    public void addChange(int signal, long value) {
        if (changes == signals.length) {
            signals = Arrays.copyOf(signals, changes * 2);
            values = Arrays.copyOf(values, changes * 2);
        }
        signals[changes] = signal;
        values[changes++] = value;
        rowEnd[rows - 1] = changes;
    }

    /**
     * Adds a control's move, independent of the rows but in time order among moves.
     *
     * @param control index into {@link dropline.bus.pit.Layout#controls()}
     * @param value its new position, or for a button 1 pressed and 0 let go, for an encoder its count
     */
    public void addMove(long atNanos, int control, int value) {
        if (moves > 0 && atNanos < moveNanos[moves - 1]) {
            throw new IllegalArgumentException(
                    "moves must not run backwards: atNanos=" + atNanos + " after=" + moveNanos[moves - 1]);
        }
        if (moves == moveNanos.length) {
            moveNanos = Arrays.copyOf(moveNanos, moves * 2);
            moveControl = Arrays.copyOf(moveControl, moves * 2);
            moveValue = Arrays.copyOf(moveValue, moves * 2);
        }
        moveNanos[moves] = atNanos;
        moveControl[moves] = control;
        moveValue[moves++] = value;
    }

    public int rows() {
        return rows;
    }

    public long rowNanos(int row) {
        return rowNanos[row];
    }

    /** Index of the row's first change. */
    public int firstChange(int row) {
        return row == 0 ? 0 : rowEnd[row - 1];
    }

    /** Index after the row's last change. */
    public int endChange(int row) {
        return rowEnd[row];
    }

    public int signal(int change) {
        return signals[change];
    }

    public long value(int change) {
        return values[change];
    }

    public int moves() {
        return moves;
    }

    public long moveNanos(int move) {
        return moveNanos[move];
    }

    public int moveControl(int move) {
        return moveControl[move];
    }

    public int moveValue(int move) {
        return moveValue[move];
    }
}
