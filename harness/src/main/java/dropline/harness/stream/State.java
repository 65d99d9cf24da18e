package dropline.harness.stream;

import java.util.Arrays;

/** One state taken apart: values by the number of their name; time and sequence number if it carries them. */
public final class State {
    private int count;
    private int[] names = new int[64];
    private double[] values = new double[64];
    private boolean timed;
    private long timeNanos;
    private boolean numbered;
    private long sequence;

    /** How many values it carries; one name may stand twice, the later counts. */
    public int count() {
        return count;
    }

    /** The number of a value's name, see {@link StreamReader#name}. */
    public int name(int index) {
        return names[index];
    }

    /** Always finite. */
    public double value(int index) {
        return values[index];
    }

    /** Whether it says its own time. */
    public boolean timed() {
        return timed;
    }

    /** The time it says, ns, from whatever instant its sender counts. */
    public long timeNanos() {
        return timeNanos;
    }

    /** Whether it says its own number. */
    public boolean numbered() {
        return numbered;
    }

    /** The number it says. */
    public long sequence() {
        return sequence;
    }

    boolean isEmpty() {
        return count == 0 && !timed && !numbered;
    }

    void clear() {
        count = 0;
        timed = false;
        numbered = false;
    }

    void value(int name, double value) {
        if (count == names.length) {
            names = Arrays.copyOf(names, count * 2);
            values = Arrays.copyOf(values, count * 2);
        }
        names[count] = name;
        values[count++] = value;
    }

    void time(long nanos) {
        timed = true;
        timeNanos = nanos;
    }

    void sequence(long number) {
        numbered = true;
        sequence = number;
    }
}
