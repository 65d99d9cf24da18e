package dropline.harness.recording;

import dropline.bus.host.StateBlock;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Signal;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalLong;

/**
 * A recording as a pit sees it: its columns mapped to the pit's signals and quantised, its controls to the pit's, times
 * counted from the recording's first instant or from where it was told to begin. The first row holds every signal known
 * then; a control that then stands elsewhere than at 0 moves there at 0.
 */
public final class PitFeed implements StateFeed {
    /** As the end of the stretch to feed: the recording's own. */
    public static final long TO_THE_END = Long.MAX_VALUE;

    private final RecordingReader reader;
    private final RecordingBlock read = new RecordingBlock();
    private final PitMapping mapping;
    private final Signal[] signals;
    private final double[] recorded;
    private final long[] quantised;
    private final boolean[] known;
    private final int[] positions;
    private final long fromNanos;
    private final long toNanos;
    private long originNanos;
    private long reachedNanos;
    private int row;
    private int move;
    private boolean rowsTakenIn;
    private boolean begun;
    private boolean ended;

    private PitFeed(RecordingReader reader, PitMapping mapping, Pit pit, long fromNanos, long toNanos) {
        this.reader = reader;
        this.mapping = mapping;
        this.signals = pit.signals().toArray(new Signal[0]);
        this.recorded = new double[signals.length];
        this.quantised = new long[signals.length];
        this.known = new boolean[signals.length];
        this.positions = new int[Layout.of(pit).controls().size()];
        this.fromNanos = fromNanos;
        this.toNanos = toNanos;
        Arrays.fill(recorded, Double.NaN);
    }

    /** The whole recording. */
    public static PitFeed open(Path recording, Pit pit, ReadOptions options) throws IOException {
        return open(RecordingFiles.of(recording), pit, options, 0, TO_THE_END);
    }

    /**
     * The recording from an instant, which becomes 0, up to but without another, both in ns after its first.
     *
     * @throws RecordingException if it is no recording, a signal's column is absent or in another unit, or it ends
     *     before {@code fromNanos}
     */
    public static PitFeed open(RecordingFiles files, Pit pit, ReadOptions options, long fromNanos, long toNanos)
            throws IOException {
        if (fromNanos < 0 || toNanos <= fromNanos) {
            throw new IllegalArgumentException(
                    "a stretch must end after it begins: fromNanos=" + fromNanos + " toNanos=" + toNanos);
        }
        RecordingReader reader = files.open(options);
        try {
            PitMapping mapping = PitMapping.of(files, reader, pit);
            PitFeed feed = new PitFeed(reader, mapping, pit, fromNanos, toNanos);
            feed.skipToBeginning(files.states());
            return feed;
        } catch (IOException | RuntimeException e) {
            reader.close();
            throw e;
        }
    }

    @Override
    public boolean fill(StateBlock block, long untilNanos) throws IOException {
        block.clear();
        if (!begun && untilNanos > 0) {
            begin(block);
        }
        long end = Math.min(untilNanos, toNanos - fromNanos);
        while (begun && !ended) {
            feedMoves(block, end);
            feedRows(block, end);
            if (row < read.rows() || move < read.moves()) {
                ended = end == toNanos - fromNanos;
                break;
            }
            more();
        }
        return !ended;
    }

    /** The latest instant of all rows and moves fed, ns after the feed's beginning. */
    public long reachedNanos() {
        return reachedNanos;
    }

    /**
     * How long the feed can last at most, ns, where that can be told without reading all of it: a compact recording
     * that is not packed, and without a second file, ends with its last instant; a stretch is no longer than was asked
     * for.
     */
    public OptionalLong mostNanos(RecordingFiles files) throws IOException {
        OptionalLong last = files.controls() == null ? CompactEnd.lastNanos(files.states()) : OptionalLong.empty();
        long whole = last.isEmpty() ? TO_THE_END : since(last.getAsLong()) + 1;
        long end = Math.min(whole, toNanos);
        return end == TO_THE_END ? OptionalLong.empty() : OptionalLong.of(Math.max(1, end - fromNanos));
    }

    /** Columns of the recording that the pit has no use for. */
    public int unusedColumns() {
        return mapping.unusedColumns();
    }

    /** Controls of the recording that the pit does not have. */
    public int unusedControls() {
        return mapping.unusedControls();
    }

    /** See {@link RecordingReader#skippedRows()}. */
    public long skippedRows() {
        return reader.skippedRows();
    }

    /** See {@link RecordingReader#losses()}. */
    public List<String> losses() {
        return reader.losses();
    }

    /** See {@link RecordingReader#bytesRead()}. */
    public long bytesRead() {
        return reader.bytesRead();
    }

    /** See {@link RecordingReader#bytesTotal()}. */
    public long bytesTotal() {
        return reader.bytesTotal();
    }

    @Override
    public void close() throws IOException {
        reader.close();
    }

    private void more() throws IOException {
        row = 0;
        move = 0;
        ended = !reader.read(read);
    }

    /** Takes in, without feeding it, all up to and with the instant to begin at. */
    private void skipToBeginning(Path recording) throws IOException {
        more();
        if (ended) {
            throw RecordingProblems.one(RecordingProblems.empty(recording.toString()));
        }
        long firstRow = read.rows() > 0 ? read.rowNanos(0) : Long.MAX_VALUE;
        long firstMove = read.moves() > 0 ? read.moveNanos(0) : Long.MAX_VALUE;
        originNanos = Math.min(firstRow, firstMove);
        long last = originNanos;
        while (!ended) {
            for (; move < read.moves() && since(read.moveNanos(move)) <= fromNanos; move++) {
                last = Math.max(last, read.moveNanos(move));
                int control = mapping.control(read.moveControl(move));
                if (control >= 0) {
                    positions[control] = read.moveValue(move);
                }
            }
            for (; row < read.rows() && since(read.rowNanos(row)) <= fromNanos; row++) {
                last = Math.max(last, read.rowNanos(row));
                takeIn(row);
            }
            if (row < read.rows() || move < read.moves()) {
                return;
            }
            more();
        }
        if (since(last) < fromNanos) {
            throw RecordingProblems.one(RecordingProblems.beginsAfterEnd(recording.toString(), fromNanos, since(last)));
        }
    }

    private void begin(StateBlock block) {
        begun = true;
        if (rowsTakenIn) {
            block.addRow(0);
        }
        for (int signal = 0; signal < signals.length; signal++) {
            if (known[signal]) {
                block.addChange(signal, quantised[signal]);
            }
        }
        for (int control = 0; control < positions.length; control++) {
            if (positions[control] != 0) {
                block.addMove(0, control, positions[control]);
            }
        }
    }

    private void feedMoves(StateBlock block, long end) {
        while (move < read.moves() && since(read.moveNanos(move)) - fromNanos < end) {
            int control = mapping.control(read.moveControl(move));
            if (control >= 0) {
                long at = since(read.moveNanos(move)) - fromNanos;
                reachedNanos = Math.max(reachedNanos, at);
                block.addMove(at, control, read.moveValue(move));
            }
            move++;
        }
    }

    private void feedRows(StateBlock block, long end) {
        while (row < read.rows() && since(read.rowNanos(row)) - fromNanos < end) {
            long at = since(read.rowNanos(row)) - fromNanos;
            reachedNanos = Math.max(reachedNanos, at);
            block.addRow(at);
            for (int signal = 0; signal < signals.length; signal++) {
                if (changed(row, signal)) {
                    block.addChange(signal, quantised[signal]);
                }
            }
            row++;
        }
    }

    private void takeIn(int taken) {
        rowsTakenIn = true;
        for (int signal = 0; signal < signals.length; signal++) {
            changed(taken, signal);
        }
    }

    /** Takes in a signal's value at a row; whether that made a difference to it in whole units of its resolution. */
    private boolean changed(int at, int signal) {
        double value = read.value(at, mapping.column(signal));
        if (value == recorded[signal] || Double.isNaN(value)) {
            return false;
        }
        recorded[signal] = value;
        long units = signals[signal].quantise(value);
        if (known[signal] && units == quantised[signal]) {
            return false;
        }
        known[signal] = true;
        quantised[signal] = units;
        return true;
    }

    private long since(long atNanos) {
        return atNanos - originNanos;
    }
}
