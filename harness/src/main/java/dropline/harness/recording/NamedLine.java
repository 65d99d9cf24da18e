package dropline.harness.recording;

import dropline.harness.problem.Problem;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** One line of a form that names its values: an instant, and values with their names. Reused line after line. */
final class NamedLine {
    long line;
    /** Whether nothing stands in it. */
    boolean blank;
    /** Whether it is a state by itself, unless it only moves controls; else it is part of the one of its instant. */
    boolean whole;
    /** Whether it begins a state, to which lines of the same instant may still add. */
    boolean begins;

    boolean timed;
    /** The time as typed. */
    String time = "";

    long nanos;
    final List<Problem> problems = new ArrayList<>();
    private String[] names = new String[8];
    private double[] values = new double[8];
    private int[] columns = new int[8];
    private int count;

    void clear(long atLine) {
        line = atLine;
        blank = false;
        whole = false;
        begins = false;
        timed = false;
        time = "";
        nanos = 0;
        count = 0;
        problems.clear();
    }

    /**
     * Adds a value.
     *
     * @param name of a signal, or of a control behind {@link CsvHeader#CONTROL}
     * @param value NaN where the name stands without one
     * @param column where the name stands in the line, from 1; 0 if that is not known
     */
    void add(String name, double value, int column) {
        if (count == names.length) {
            names = Arrays.copyOf(names, 2 * count);
            values = Arrays.copyOf(values, 2 * count);
            columns = Arrays.copyOf(columns, 2 * count);
        }
        names[count] = name;
        values[count] = value;
        columns[count++] = column;
    }

    /** Drops the values. */
    void dropValues() {
        count = 0;
    }

    int count() {
        return count;
    }

    String name(int i) {
        return names[i];
    }

    double value(int i) {
        return values[i];
    }

    int column(int i) {
        return columns[i];
    }
}
