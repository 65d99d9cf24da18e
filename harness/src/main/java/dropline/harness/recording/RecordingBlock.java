package dropline.harness.recording;

import java.util.Arrays;

/**
 * A stretch of a recording: rows with the value of every column at their instants, and control moves. A reader fills it
 * anew at each call.
 */
public final class RecordingBlock {
    private int columns;
    private int rows;
    private long[] rowNanos = new long[0];
    private double[] values = new double[0];
    private int moves;
    private long[] moveNanos = new long[16];
    private int[] moveControl = new int[16];
    private int[] moveValue = new int[16];

    public int rows() {
        return rows;
    }

    /** A row's recorded time, ns. Rows never run backwards. */
    public long rowNanos(int row) {
        return rowNanos[row];
    }

    /** What is known of a column at a row; NaN if nothing yet. */
    public double value(int row, int column) {
        return values[row * columns + column];
    }

    public int moves() {
        return moves;
    }

    /** A move's recorded time, ns. Moves never run backwards. */
    public long moveNanos(int move) {
        return moveNanos[move];
    }

    /** Index into {@link RecordingReader#controls()}. */
    public int moveControl(int move) {
        return moveControl[move];
    }

    public int moveValue(int move) {
        return moveValue[move];
    }

    /** All values, row after row. */
    double[] values() {
        return values;
    }

    long[] times() {
        return rowNanos;
    }

    /** Empties the block and makes room. */
    void clear(int columns, int capacity) {
        this.columns = columns;
        rows = 0;
        moves = 0;
        if (rowNanos.length < capacity) {
            rowNanos = new long[capacity];
        }
        if (values.length < capacity * columns) {
            values = new double[capacity * columns];
        }
    }

    /** Says how many rows were written straight into {@link #times()} and {@link #values()}. */
    void rows(int filled) {
        rows = filled;
    }

    void addRow(long atNanos, double[] row) {
        rowNanos[rows] = atNanos;
        System.arraycopy(row, 0, values, rows * columns, columns);
        rows++;
    }

    void addMove(long atNanos, int control, int value) {
        if (moves == moveNanos.length) {
            moveNanos = Arrays.copyOf(moveNanos, moves * 2);
            moveControl = Arrays.copyOf(moveControl, moves * 2);
            moveValue = Arrays.copyOf(moveValue, moves * 2);
        }
        moveNanos[moves] = atNanos;
        moveControl[moves] = control;
        moveValue[moves++] = value;
    }
}
