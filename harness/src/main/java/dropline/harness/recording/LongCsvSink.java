package dropline.harness.recording;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/**
 * Writes long CSV: a line for each value that changes. The first lines bring up every name, in order, known or not. A
 * state that would otherwise not be seen, or join the one before, begins with a line of nothing but its time.
 */
final class LongCsvSink implements RowSink {
    private final OutputStream out;
    private final String[] names;
    private final String[] controls;
    private final double[] last;
    private final StringBuilder line = new StringBuilder();
    private boolean begun;
    private boolean stated;
    private long stateNanos;

    LongCsvSink(OutputStream out, List<RecordingColumn> columns, List<String> controls) throws IOException {
        this.out = out;
        this.names = columns.stream().map(column -> quoted(column.name())).toArray(String[]::new);
        this.controls =
                controls.stream().map(name -> quoted(CsvHeader.CONTROL + name)).toArray(String[]::new);
        this.last = new double[names.length];
        Arrays.fill(last, Double.NaN);
        line.append("time_s,signal,value\n");
        write();
    }

    @Override
    public void row(long atNanos, double[] values) throws IOException {
        begin(atNanos);
        boolean changed = false;
        for (int i = 0; i < values.length; i++) {
            changed |= values[i] != last[i] && !Double.isNaN(values[i]);
        }
        if (!changed || (stated && atNanos == stateNanos)) {
            Decimals.appendSeconds(line, atNanos);
            line.append(",,\n");
        }
        for (int i = 0; i < values.length; i++) {
            if (values[i] != last[i] && !Double.isNaN(values[i])) {
                last[i] = values[i];
                Decimals.appendSeconds(line, atNanos);
                line.append(',').append(names[i]).append(',');
                Decimals.append(line, values[i]);
                line.append('\n');
            }
        }
        stated = true;
        stateNanos = atNanos;
        write();
    }

    @Override
    public void move(long atNanos, int control, int value) throws IOException {
        begin(atNanos);
        Decimals.appendSeconds(line, atNanos);
        line.append(',').append(controls[control]).append(',').append(value).append('\n');
        write();
    }

    @Override
    public void finish() {
        // Every line has been written.
    }

    /** Brings up every name at the first instant there is. */
    private void begin(long atNanos) {
        if (begun) {
            return;
        }
        begun = true;
        for (String[] some : new String[][] {names, controls}) {
            for (String name : some) {
                Decimals.appendSeconds(line, atNanos);
                line.append(',').append(name).append(",\n");
            }
        }
    }

    private static String quoted(String name) {
        StringBuilder text = new StringBuilder();
        CsvSink.quoted(text, name);
        return text.toString();
    }

    private void write() throws IOException {
        out.write(line.toString().getBytes(StandardCharsets.UTF_8));
        line.setLength(0);
    }
}
