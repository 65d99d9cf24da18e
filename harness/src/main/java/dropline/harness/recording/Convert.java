package dropline.harness.recording;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Turns a recording of one form into another, as a stream. */
public final class Convert {
    private Convert() {}

    /** Told now and then how far it is. */
    @FunctionalInterface
    public interface Progress {
        /** Bytes of the input read, of all there are. */
        void at(long bytesRead, long bytesTotal);
    }

    /**
     * What came of it.
     *
     * @param rows rows written
     * @param moves controls' moves written
     * @param skippedRows rows left out for being wrong
     * @param losses what was lost and could be read past, a sentence each
     */
    public record Result(long rows, long moves, long skippedRows, List<String> losses) {
        public Result {
            losses = List.copyOf(losses);
        }
    }

    /** Whether a recording can be written under this name: its ending is a known one. */
    public static boolean canWrite(Path out) {
        return RecordingForm.of(out).isPresent();
    }

    /**
     * Converts; the output's name chooses the form written, the input's beginning shows the form read. The output takes
     * its place when it is whole; if anything goes wrong, what was there before stays.
     *
     * @throws RecordingException if an input is wrong, the inputs do not agree, the output's name has no known ending,
     *     or it is an input
     */
    public static Result run(RecordingFiles in, Path out, ReadOptions options, Progress progress) throws IOException {
        if (RecordingForm.of(out).isEmpty()) {
            throw RecordingProblems.one(RecordingProblems.unknownEnding(out.toString()));
        }
        for (Path input : in.paths()) {
            if (Files.exists(input) && Files.exists(out) && Files.isSameFile(input, out)) {
                throw RecordingProblems.one(RecordingProblems.sameFile(out.toString()));
            }
        }
        in.mustAgree(options);
        try (RecordingReader reader = in.open(options);
                RecordingWriter writer = RecordingWriter.create(out, reader.columns(), reader.controls())) {
            return copy(in.states(), reader, writer, progress);
        }
    }

    private static Result copy(Path in, RecordingReader reader, RecordingWriter writer, Progress progress)
            throws IOException {
        RecordingBlock block = new RecordingBlock();
        double[] values = new double[reader.columns().size()];
        long rows = 0;
        long moves = 0;
        while (reader.read(block)) {
            int move = 0;
            for (int row = 0; row < block.rows(); row++) {
                for (; move < block.moves() && block.moveNanos(move) <= block.rowNanos(row); move++) {
                    write(reader, writer, block, move);
                }
                for (int column = 0; column < values.length; column++) {
                    values[column] = block.value(row, column);
                }
                writer.row(block.rowNanos(row), values);
            }
            for (; move < block.moves(); move++) {
                write(reader, writer, block, move);
            }
            rows += block.rows();
            moves += block.moves();
            progress.at(reader.bytesRead(), reader.bytesTotal());
        }
        if (rows + moves == 0) {
            throw RecordingProblems.one(RecordingProblems.empty(in.toString()));
        }
        writer.finish();
        return new Result(rows, moves, reader.skippedRows(), reader.losses());
    }

    private static void write(RecordingReader reader, RecordingWriter writer, RecordingBlock block, int move)
            throws IOException {
        writer.move(block.moveNanos(move), reader.controls().get(block.moveControl(move)), block.moveValue(move));
    }
}
