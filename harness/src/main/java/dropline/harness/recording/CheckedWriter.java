package dropline.harness.recording;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Holds what is written to the rules, rounds it and fills what stands for "as before". */
final class CheckedWriter implements RecordingWriter {
    private final PendingFile file;
    private final RowSink sink;
    private final int[] decimals;
    private final double[] known;
    private final Map<String, Integer> controls = new HashMap<>();
    private long lastNanos = Long.MIN_VALUE;
    private boolean finished;

    CheckedWriter(PendingFile file, RowSink sink, List<RecordingColumn> columns, List<String> controls) {
        this.file = file;
        this.sink = sink;
        this.decimals = columns.stream().mapToInt(RecordingColumn::decimals).toArray();
        this.known = new double[decimals.length];
        Arrays.fill(known, Double.NaN);
        for (String control : controls) {
            this.controls.put(control, this.controls.size());
        }
    }

    /** Refuses names that could not be told apart, and more columns than the compact form holds. */
    static void checkNames(List<RecordingColumn> columns, List<String> controls) {
        List<String> names = new ArrayList<>();
        columns.forEach(column -> names.add(column.name()));
        controls.forEach(control -> names.add(CsvHeader.CONTROL + control));
        Set<String> seen = new HashSet<>();
        for (String name : names) {
            if (!seen.add(name)) {
                throw new IllegalArgumentException("names must be unique: name=" + name);
            }
        }
        if (names.size() > CompactFormat.MOST_COLUMNS) {
            throw new IllegalArgumentException(
                    "columns and controls must be at most " + CompactFormat.MOST_COLUMNS + ": number=" + names.size());
        }
    }

    @Override
    public void row(long atNanos, double[] values) throws IOException {
        checkOrder(atNanos);
        if (values.length != known.length) {
            throw new IllegalArgumentException(
                    "a row needs a value for every column: values=" + values.length + " columns=" + known.length);
        }
        for (int i = 0; i < known.length; i++) {
            if (Double.isInfinite(values[i])) {
                throw new IllegalArgumentException("values must be finite: column=" + i + " value=" + values[i]);
            }
            if (!Double.isNaN(values[i])) {
                known[i] = decimals[i] == RecordingColumn.AS_IS ? values[i] : Decimals.rounded(values[i], decimals[i]);
            }
        }
        sink.row(atNanos, known);
    }

    @Override
    public void move(long atNanos, String control, int value) throws IOException {
        checkOrder(atNanos);
        Integer index = controls.get(control);
        if (index == null) {
            throw new IllegalArgumentException("a control must be named at the beginning: control=" + control);
        }
        sink.move(atNanos, index, value);
    }

    @Override
    public void finish() throws IOException {
        if (finished) {
            throw new IllegalStateException("a recording is finished once");
        }
        finished = true;
        sink.finish();
        file.putInPlace();
    }

    @Override
    public void close() throws IOException {
        file.close();
    }

    private void checkOrder(long atNanos) {
        if (finished) {
            throw new IllegalStateException("a finished recording takes no more");
        }
        if (atNanos < lastNanos) {
            throw new IllegalArgumentException(
                    "time must not run backwards: atNanos=" + atNanos + " after=" + lastNanos);
        }
        lastNanos = atNanos;
    }
}
