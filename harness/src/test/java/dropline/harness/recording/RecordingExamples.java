package dropline.harness.recording;

import static org.junit.jupiter.api.Assertions.assertThrows;

import dropline.harness.problem.Problem;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.zip.GZIPOutputStream;

/** Recordings to try, and what was read as text. */
final class RecordingExamples {
    private RecordingExamples() {}

    static Path csv(Path folder, String text) throws IOException {
        return Files.write(folder.resolve("flight.csv"), text.getBytes(StandardCharsets.UTF_8));
    }

    /**
     * A recording with two columns that change now and then, one that is late and one of which nothing is ever known,
     * rows and moves that share instants, and rows in which nothing changes.
     */
    static Path random(Path folder, long seed) throws IOException {
        Random random = new Random(seed);
        Path file = folder.resolve("random.dlr");
        List<RecordingColumn> columns = List.of("a", "b c", "late", "never").stream()
                .map(name -> new RecordingColumn(name, RecordingColumn.AS_IS))
                .toList();
        try (RecordingWriter writer = RecordingWriter.create(file, columns, List.of("gear", "flaps"))) {
            double[] values = {random.nextGaussian(), 0, Double.NaN, Double.NaN};
            int[] positions = new int[2];
            long nanos = random.nextInt(1000) - 500L;
            for (int i = 0; i < 1100; i++) {
                nanos += random.nextInt(3) == 0 ? 0 : random.nextInt(2_000_000_000);
                if (random.nextInt(5) == 0) {
                    int control = random.nextInt(2);
                    positions[control] += 1 + random.nextInt(3);
                    writer.move(nanos, control == 0 ? "gear" : "flaps", positions[control]);
                } else {
                    values[0] = random.nextInt(3) == 0 ? random.nextGaussian() * 1e9 : values[0];
                    values[1] = random.nextInt(4) == 0 ? random.nextInt(100) / 10.0 : values[1];
                    values[2] = i > 40 && random.nextBoolean() ? Double.longBitsToDouble(i * 0x4017L << 40) : values[2];
                    writer.row(nanos, values);
                }
            }
            writer.finish();
        }
        return file;
    }

    static byte[] gzip(byte[] plain) throws IOException {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (OutputStream out = new GZIPOutputStream(packed)) {
            out.write(plain);
        }
        return packed.toByteArray();
    }

    /**
     * Block by block all rows, then all moves, a line each: time in ns, then values, or {@code !}, control, position.
     */
    static List<String> lines(RecordingReader reader) throws IOException {
        List<String> lines = new ArrayList<>();
        RecordingBlock block = new RecordingBlock();
        int columns = reader.columns().size();
        while (reader.read(block)) {
            for (int row = 0; row < block.rows(); row++) {
                StringBuilder line = new StringBuilder().append(block.rowNanos(row));
                for (int column = 0; column < columns; column++) {
                    double value = block.value(row, column);
                    line.append(' ').append(Double.isNaN(value) ? "-" : Double.toString(value + 0.0));
                }
                lines.add(line.toString());
            }
            for (int move = 0; move < block.moves(); move++) {
                lines.add(block.moveNanos(move) + " ! " + block.moveControl(move) + " " + block.moveValue(move));
            }
        }
        return lines;
    }

    static List<String> lines(Path file) throws IOException {
        return lines(file, ReadOptions.strict());
    }

    static List<String> lines(Path file, ReadOptions options) throws IOException {
        try (RecordingReader reader = RecordingReader.open(file, options)) {
            return lines(reader);
        }
    }

    /** All rows, then all moves. */
    static List<String> rowsThenMoves(Path file) throws IOException {
        List<String> lines = new ArrayList<>(lines(file));
        lines.sort(Comparator.comparing(line -> line.contains("!")));
        return lines;
    }

    /** What is wrong with a recording, a line each: {@code CODE line:column found}. */
    static List<String> problems(Path file) {
        RecordingException wrong = assertThrows(RecordingException.class, () -> lines(file));
        return wrong.problems().stream().map(RecordingExamples::brief).toList();
    }

    static String brief(Problem problem) {
        return problem.code() + " " + problem.line() + ":" + problem.column() + " " + problem.found();
    }

    static void copy(Path from, Path to) throws IOException {
        Convert.run(RecordingFiles.of(from), to, ReadOptions.strict(), (read, total) -> {});
    }
}
