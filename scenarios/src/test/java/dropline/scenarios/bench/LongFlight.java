package dropline.scenarios.bench;

import dropline.harness.recording.ReadOptions;
import dropline.harness.recording.RecordingBlock;
import dropline.harness.recording.RecordingReader;
import dropline.harness.recording.RecordingWriter;
import java.io.IOException;
import java.nio.file.Path;

/** A recording as long as wanted: the same flight flown again and again, control moves included. */
final class LongFlight {
    /** From the last row of one lap to the first of the next, ns: the demo's own row period, 25 Hz. */
    private static final long ROW_NANOS = 40_000_000;

    private LongFlight() {}

    /** Writes laps of {@code flight} until {@code lengthNanos} are full; tells the length it came to, ns. */
    static long write(Path flight, Path target, long lengthNanos) throws IOException {
        try (RecordingReader header = RecordingReader.open(flight, ReadOptions.strict());
                RecordingWriter writer = RecordingWriter.create(target, header.columns(), header.controls())) {
            long offset = 0;
            long last = 0;
            while (last < lengthNanos) {
                last = lap(flight, writer, offset, lengthNanos);
                offset = last + ROW_NANOS;
            }
            writer.finish();
            return last;
        }
    }

    private static long lap(Path flight, RecordingWriter writer, long offset, long lengthNanos) throws IOException {
        RecordingBlock block = new RecordingBlock();
        long last = offset;
        try (RecordingReader reader = RecordingReader.open(flight, ReadOptions.strict())) {
            double[] row = new double[reader.columns().size()];
            while (last < lengthNanos && reader.read(block)) {
                last = Math.max(last, copy(block, reader, writer, row, offset));
            }
        }
        return last;
    }

    /** Rows and moves in the order of their times. */
    private static long copy(
            RecordingBlock block, RecordingReader reader, RecordingWriter writer, double[] row, long offset)
            throws IOException {
        int move = 0;
        long last = offset;
        for (int r = 0; r <= block.rows(); r++) {
            long until = r < block.rows() ? block.rowNanos(r) : Long.MAX_VALUE;
            while (move < block.moves() && block.moveNanos(move) <= until) {
                last = offset + block.moveNanos(move);
                writer.move(last, reader.controls().get(block.moveControl(move)), block.moveValue(move));
                move++;
            }
            if (r < block.rows()) {
                for (int column = 0; column < row.length; column++) {
                    row[column] = block.value(r, column);
                }
                last = offset + until;
                writer.row(last, row);
            }
        }
        return last;
    }
}
