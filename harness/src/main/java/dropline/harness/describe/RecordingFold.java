package dropline.harness.describe;

import dropline.harness.describe.RecordingSummary.ControlSummary;
import dropline.harness.recording.ReadOptions;
import dropline.harness.recording.RecordingBlock;
import dropline.harness.recording.RecordingColumn;
import dropline.harness.recording.RecordingFiles;
import dropline.harness.recording.RecordingReader;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.DoubleConsumer;

/** Reads a recording through once and keeps what its summary needs; memory does not grow with its length. */
public final class RecordingFold {
    private final RecordingReader reader;
    private final List<ColumnFold> columns = new ArrayList<>();
    private final long[] moves;
    private final int[] leastPosition;
    private final int[] greatestPosition;
    private final PauseFold pauses = new PauseFold();
    private long firstNanos = Long.MAX_VALUE;
    private long lastNanos = Long.MIN_VALUE;

    private RecordingFold(RecordingReader reader) {
        this.reader = reader;
        for (RecordingColumn column : reader.columns()) {
            columns.add(new ColumnFold(column.name()));
        }
        int controls = reader.controls().size();
        this.moves = new long[controls];
        this.leastPosition = new int[controls];
        this.greatestPosition = new int[controls];
    }

    /**
     * The summary of a recording.
     *
     * @param progress told now and then which share of it has been read, 0..1
     * @throws dropline.harness.recording.RecordingException if it is wrong
     */
    public static RecordingSummary of(RecordingFiles files, ReadOptions options, DoubleConsumer progress)
            throws IOException {
        files.mustAgree(options);
        try (RecordingReader reader = files.open(options)) {
            RecordingFold fold = new RecordingFold(reader);
            RecordingBlock block = new RecordingBlock();
            while (reader.read(block)) {
                fold.take(block);
                progress.accept((double) reader.bytesRead() / Math.max(1, reader.bytesTotal()));
            }
            return fold.summary(files.states().toString());
        }
    }

    private void take(RecordingBlock block) {
        for (int row = 0; row < block.rows(); row++) {
            reach(block.rowNanos(row));
            pauses.take(block.rowNanos(row));
            for (int column = 0; column < columns.size(); column++) {
                columns.get(column).take(block.value(row, column));
            }
        }
        for (int move = 0; move < block.moves(); move++) {
            reach(block.moveNanos(move));
            int control = block.moveControl(move);
            moves[control]++;
            leastPosition[control] = Math.min(leastPosition[control], block.moveValue(move));
            greatestPosition[control] = Math.max(greatestPosition[control], block.moveValue(move));
        }
    }

    private void reach(long nanos) {
        firstNanos = Math.min(firstNanos, nanos);
        lastNanos = Math.max(lastNanos, nanos);
    }

    private RecordingSummary summary(String file) {
        boolean empty = firstNanos > lastNanos;
        long first = empty ? 0 : firstNanos;
        long last = empty ? 0 : lastNanos;
        List<ControlSummary> controls = new ArrayList<>();
        for (int i = 0; i < moves.length; i++) {
            controls.add(new ControlSummary(reader.controls().get(i), moves[i], leastPosition[i], greatestPosition[i]));
        }
        return new RecordingSummary(
                file,
                first,
                last,
                reader.timeUnit().map(RecordingFold::word).orElse(""),
                pauses.states(),
                pauses.periodNanos(),
                pauses.count(),
                pauses.longest(first),
                columns.stream().map(column -> column.summary(last - first)).toList(),
                controls,
                reader.skippedRows(),
                reader.losses());
    }

    private static String word(TimeUnit unit) {
        return switch (unit) {
            case SECONDS -> "s";
            case MILLISECONDS -> "ms";
            case MICROSECONDS -> "us";
            default -> "ns";
        };
    }
}
