package dropline.harness.recording;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * Writes wide CSV: comma, decimal point, time in seconds, every known value in every row. A control's move is a line of
 * its own in which only time and the control's field are filled.
 */
final class CsvSink implements RowSink {
    private static final String TIME = "time_s";
    private static final String OTHER_TIME = "seconds";

    private final OutputStream out;
    private final int columns;
    private final int controls;
    private final StringBuilder line = new StringBuilder();

    CsvSink(OutputStream out, List<RecordingColumn> columns, List<String> controls) throws IOException {
        this.out = out;
        this.columns = columns.size();
        this.controls = controls.size();
        line.append(isTakenForLong(columns) ? OTHER_TIME : TIME);
        for (RecordingColumn column : columns) {
            line.append(',');
            quoted(line, column.name());
        }
        for (String control : controls) {
            line.append(',');
            quoted(line, CsvHeader.CONTROL + control);
        }
        writeLine();
    }

    @Override
    public void row(long atNanos, double[] values) throws IOException {
        Decimals.appendSeconds(line, atNanos);
        for (double value : values) {
            line.append(',');
            if (!Double.isNaN(value)) {
                Decimals.append(line, value);
            }
        }
        line.append(",".repeat(controls));
        writeLine();
    }

    @Override
    public void move(long atNanos, int control, int value) throws IOException {
        Decimals.appendSeconds(line, atNanos);
        line.append(",".repeat(columns + control + 1)).append(value).append(",".repeat(controls - control - 1));
        writeLine();
    }

    @Override
    public void finish() {
        // Every line has been written.
    }

    /** Whether the columns' names would make the header of the other table, if the first were one of a time. */
    private static boolean isTakenForLong(List<RecordingColumn> columns) {
        List<String> names = new ArrayList<>(List.of(TIME));
        columns.forEach(column -> names.add(column.name()));
        return LongHeader.of(names).isPresent();
    }

    /** Appends a field, between quotes where it needs them (RFC 4180, 2). */
    static void quoted(StringBuilder line, String name) {
        boolean plain =
                name.chars().noneMatch(c -> c == '"' || c == ',' || c == ';' || c == '\t' || c == '\n' || c == '\r');
        if (plain && !name.startsWith(" ") && !name.endsWith(" ")) {
            line.append(name);
        } else {
            line.append('"').append(name.replace("\"", "\"\"")).append('"');
        }
    }

    private void writeLine() throws IOException {
        line.append('\n');
        out.write(line.toString().getBytes(StandardCharsets.UTF_8));
        line.setLength(0);
    }
}
