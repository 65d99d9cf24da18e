package dropline.harness.recording;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * Reads the forms that name each value where it stands. The names are not known before the end, so the file is read
 * twice: once for the names, which are all that is kept, and once for the values. Values of one instant make one state,
 * unless a name comes again or a line says that it begins one.
 */
final class NamedRecording implements RecordingReader {
    private final SourceStream source;
    private final boolean lenient;
    private final NamedLines lines;
    private final NameBook names;
    private final TimeUnit unit;
    private final LineCheck check;
    private final ProblemCount found;
    private final double[] known;
    private final int[] positions;
    /** The state in which each column was given last, counted from 1. */
    private final long[] givenIn;

    private long state;
    private long stateNanos;
    private boolean stateOpen;
    private long skippedRows;

    private NamedRecording(SourceStream source, NamedLines lines, NameBook names, TimeUnit unit, boolean lenient) {
        this.source = source;
        this.lenient = lenient;
        this.lines = lines;
        this.names = names;
        this.unit = unit;
        this.check = new LineCheck(new LineProblems(source.name()));
        this.found = new ProblemCount(source.name());
        this.known = new double[names.columns().size()];
        this.positions = new int[names.controls().size()];
        this.givenIn = new long[known.length];
        Arrays.fill(known, Double.NaN);
    }

    static NamedRecording open(Path file, NamedLines.Opening opening, ReadOptions options) throws IOException {
        NameBook names = new NameBook();
        TimeUnit unit;
        try (SourceStream source = SourceStream.open(file)) {
            NamedLines lines = opening.open(source);
            learn(lines, names, new LineProblems(source.name()));
            unit = lines.unit();
        }
        SourceStream source = SourceStream.open(file);
        try {
            return new NamedRecording(source, opening.open(source), names, unit, options.lenient());
        } catch (IOException | RuntimeException e) {
            source.close();
            throw e;
        }
    }

    /** Learns the names of all lines that count. */
    private static void learn(NamedLines lines, NameBook names, LineProblems problems) throws IOException {
        LineCheck check = new LineCheck(problems);
        for (NamedLine line = lines.next(); line != null; line = lines.next()) {
            if (check.accepts(line)) {
                names.learn(line, problems);
            }
        }
    }

    @Override
    public boolean read(RecordingBlock block) throws IOException {
        int most = CompactFormat.rowsPerBlock(known.length);
        // a line can end one state and be another
        block.clear(known.length, most + 1);
        while (block.rows() < most && block.moves() < CompactFormat.MOST_MOVES) {
            NamedLine line = lines.next();
            if (line == null) {
                found.mustBeEmpty();
                closeState(block);
                break;
            }
            if (!check.accepts(line)) {
                skippedRows++;
                if (!lenient) {
                    line.problems.forEach(found::note);
                }
            } else if (found.isEmpty()) {
                take(line, block);
            }
        }
        return block.rows() + block.moves() > 0;
    }

    private void take(NamedLine line, RecordingBlock block) throws RecordingException {
        if (line.whole || line.begins || line.nanos != stateNanos) {
            closeState(block);
        }
        if (line.begins) {
            openState(line.nanos);
        }
        boolean stated = false;
        boolean moved = false;
        for (int i = 0; i < line.count(); i++) {
            double value = line.value(i);
            if (!Double.isNaN(value)) {
                Integer place = names.place(line.name(i));
                if (place == null) {
                    throw RecordingProblems.one(RecordingProblems.changed(source.name(), line.name(i)));
                }
                moved |= place < 0;
                stated |= place >= 0;
                if (place < 0) {
                    move(block, line.nanos, -place - 1, (int) value);
                } else {
                    set(block, line.nanos, place, value);
                }
            }
        }
        if (line.whole && (stated || !moved)) {
            openState(line.nanos);
            closeState(block);
        }
    }

    private void set(RecordingBlock block, long atNanos, int column, double value) {
        if (stateOpen && givenIn[column] == state) {
            closeState(block);
        }
        openState(atNanos);
        givenIn[column] = state;
        known[column] = value;
    }

    private void move(RecordingBlock block, long atNanos, int control, int position) {
        if (positions[control] != position) {
            positions[control] = position;
            block.addMove(atNanos, control, position);
        }
    }

    private void openState(long atNanos) {
        state += stateOpen ? 0 : 1;
        stateOpen = true;
        stateNanos = atNanos;
    }

    private void closeState(RecordingBlock block) {
        if (stateOpen) {
            block.addRow(stateNanos, known);
            stateOpen = false;
        }
    }

    @Override
    public List<RecordingColumn> columns() {
        return names.columns();
    }

    @Override
    public List<String> controls() {
        return names.controls();
    }

    @Override
    public int namesLine() {
        return 0;
    }

    @Override
    public Optional<TimeUnit> timeUnit() {
        return Optional.of(unit);
    }

    @Override
    public long skippedRows() {
        return skippedRows;
    }

    @Override
    public List<String> losses() {
        return lines.losses();
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
