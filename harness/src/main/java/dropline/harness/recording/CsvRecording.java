package dropline.harness.recording;

import de.siegmar.fastcsv.reader.CloseableIterator;
import de.siegmar.fastcsv.reader.CsvParseException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * Reads wide CSV. A row with an empty field takes that column's value from before; a row in which only controls' fields
 * are filled moves controls and is no state. Once a row is bad nothing more is handed out, but the rest is read to list
 * what else is bad.
 */
final class CsvRecording implements RecordingReader {
    private final SourceStream source;
    private final boolean lenient;
    private final LineProblems problems;
    private final CsvHeader header;
    private final CloseableIterator<CsvRow> rows;
    private final double[] known;
    private final int[] positions;
    private final ProblemCount found;
    private final List<String> losses = new ArrayList<>();
    private long skippedRows;
    private long lastNanos = Long.MIN_VALUE;
    private long lastLine;

    private CsvRecording(
            SourceStream source,
            ReadOptions options,
            LineProblems problems,
            CsvHeader header,
            CloseableIterator<CsvRow> rows) {
        this.source = source;
        this.lenient = options.lenient();
        this.problems = problems;
        this.header = header;
        this.rows = rows;
        this.known = new double[header.columns().size()];
        this.positions = new int[header.controls().size()];
        this.found = new ProblemCount(source.name());
        this.lastLine = 1;
        Arrays.fill(known, Double.NaN);
    }

    static CsvRecording open(SourceStream source, TextLook look, ReadOptions options) throws IOException {
        LineProblems problems = new LineProblems(source.name());
        CsvFields fields = new CsvFields(problems);
        CloseableIterator<CsvRow> rows = CsvText.lines(source, look.separator(), fields);
        try {
            if (!rows.hasNext()) {
                throw RecordingProblems.one(RecordingProblems.emptyFile(source.name()));
            }
            long line = rows.next().line;
            CsvHeader header = CsvHeader.of(source.name(), line, fields.names(), fields.starts(), options.timeUnit());
            fields.understood(header);
            return new CsvRecording(source, options, problems, header, rows);
        } catch (CsvParseException e) {
            throw RecordingProblems.one(problems.malformed(1, CsvText.reason(e)));
        } catch (UncheckedIOException e) {
            throw CsvText.cause(e);
        }
    }

    @Override
    public boolean read(RecordingBlock block) throws IOException {
        int most = CompactFormat.rowsPerBlock(known.length);
        block.clear(known.length, most);
        while (block.rows() < most && block.moves() < CompactFormat.MOST_MOVES) {
            CsvRow row = next();
            if (row == null) {
                found.mustBeEmpty();
                break;
            }
            if (accepted(row) && (lenient || found.isEmpty())) {
                take(row, block);
            }
        }
        return block.rows() + block.moves() > 0;
    }

    /** The next whole line, or null at the end; the last line of a file that was cut is not whole. */
    private @Nullable CsvRow next() throws IOException {
        try {
            if (!rows.hasNext()) {
                return null;
            }
            CsvRow row = rows.next();
            if (!rows.hasNext() && source.cut()) {
                losses.add(RecordingProblems.cutLine(row.line));
                return null;
            }
            return row;
        } catch (CsvParseException e) {
            if (lenient) {
                losses.add(RecordingProblems.noCsvFrom(lastLine + 1, CsvText.reason(e)));
            } else {
                found.note(problems.malformed(lastLine + 1, CsvText.reason(e)));
            }
            return null;
        } catch (UncheckedIOException e) {
            throw CsvText.cause(e);
        }
    }

    /** Whether a row counts; notes or counts what is wrong with it. */
    private boolean accepted(CsvRow row) {
        int expected = header.fields().size();
        if (row.blank) {
            return false;
        }
        if (row.fields < expected || row.extraFields) {
            row.problems.clear();
            row.problems.add(problems.ragged(row.line, row.fields, expected));
        } else if (!row.timed) {
            row.problems.add(problems.noTime(row.line));
        } else if (row.problems.isEmpty() && row.nanos < lastNanos) {
            row.problems.add(problems.backwards(row.line, row.time, lastNanos, lastLine));
        }
        if (row.problems.isEmpty()) {
            lastNanos = row.nanos;
            lastLine = row.line;
            return true;
        }
        skippedRows++;
        if (!lenient) {
            row.problems.forEach(found::note);
        }
        return false;
    }

    private void take(CsvRow row, RecordingBlock block) {
        for (int control = 0; control < positions.length; control++) {
            if (row.positioned[control] && row.positions[control] != positions[control]) {
                positions[control] = row.positions[control];
                block.addMove(row.nanos, control, positions[control]);
            }
        }
        if (row.stated || !row.moved) {
            for (int column = 0; column < known.length; column++) {
                known[column] = Double.isNaN(row.values[column]) ? known[column] : row.values[column];
            }
            block.addRow(row.nanos, known);
        }
    }

    @Override
    public List<RecordingColumn> columns() {
        return header.columns();
    }

    @Override
    public List<String> controls() {
        return header.controls();
    }

    @Override
    public int namesLine() {
        return header.line();
    }

    @Override
    public Optional<TimeUnit> timeUnit() {
        return Optional.of(header.unit());
    }

    @Override
    public long skippedRows() {
        return skippedRows;
    }

    @Override
    public List<String> losses() {
        return List.copyOf(losses);
    }

    @Override
    public long bytesRead() {
        return source.bytesRead();
    }

    @Override
    public long bytesTotal() {
        return source.bytesTotal();
    }

    @Override
    public void close() throws IOException {
        source.close();
    }
}
