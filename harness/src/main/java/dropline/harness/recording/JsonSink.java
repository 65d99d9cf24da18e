package dropline.harness.recording;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import tools.jackson.core.io.JsonStringEncoder;

/**
 * Writes JSON lines: an object for each state, with the values that change, and one for each move. The first object
 * holds every name, in order, with null where nothing is known.
 */
final class JsonSink implements RowSink {
    private final OutputStream out;
    private final String time;
    private final String[] names;
    private final String[] controls;
    private final double[] last;
    private final StringBuilder line = new StringBuilder();
    private boolean begun;

    JsonSink(OutputStream out, List<RecordingColumn> columns, List<String> controls) {
        this.out = out;
        this.time = "{" + key(timeKey(columns));
        this.names = columns.stream().map(column -> "," + key(column.name())).toArray(String[]::new);
        this.controls = controls.stream()
                .map(name -> "," + key(CsvHeader.CONTROL + name))
                .toArray(String[]::new);
        this.last = new double[names.length];
        Arrays.fill(last, Double.NaN);
    }

    @Override
    public void row(long atNanos, double[] values) throws IOException {
        begin(atNanos);
        for (int i = 0; i < values.length; i++) {
            if (Double.isNaN(values[i]) ? !begun : values[i] != last[i]) {
                value(names[i], values[i]);
                last[i] = values[i];
            }
        }
        if (!begun) {
            nulls(controls, -1);
        }
        end();
    }

    @Override
    public void move(long atNanos, int control, int value) throws IOException {
        begin(atNanos);
        if (!begun) {
            nulls(names, -1);
            nulls(Arrays.copyOf(controls, control), -1);
        }
        line.append(controls[control]).append(value);
        if (!begun) {
            nulls(controls, control);
        }
        end();
    }

    @Override
    public void finish() {
        // Every line has been written.
    }

    private void begin(long atNanos) {
        line.append(time);
        Decimals.appendSeconds(line, atNanos);
    }

    private void value(String key, double value) {
        line.append(key);
        if (Double.isNaN(value)) {
            line.append("null");
        } else {
            Decimals.append(line, value);
        }
    }

    /** Names what stands behind an index, without values. */
    private void nulls(String[] keys, int after) {
        for (int i = after + 1; i < keys.length; i++) {
            line.append(keys[i]).append("null");
        }
    }

    private void end() throws IOException {
        line.append("}\n");
        begun = true;
        out.write(line.toString().getBytes(StandardCharsets.UTF_8));
        line.setLength(0);
    }

    /** A key for the time that no column has. */
    private static String timeKey(List<RecordingColumn> columns) {
        Set<String> taken = new HashSet<>();
        columns.forEach(column -> taken.add(column.name()));
        String key = "time_s";
        while (taken.contains(key)) {
            key = "time " + key;
        }
        return key;
    }

    private static String key(String name) {
        StringBuilder text = new StringBuilder("\"");
        JsonStringEncoder.getInstance().quoteAsString(name, text);
        return text.append("\":").toString();
    }
}
