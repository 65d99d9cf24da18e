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
import java.util.List;
import java.util.zip.GZIPOutputStream;

/** Recordings to try, and what was read as text. */
final class RecordingExamples {
    private RecordingExamples() {}

    static Path csv(Path folder, String text) throws IOException {
        return Files.write(folder.resolve("flight.csv"), text.getBytes(StandardCharsets.UTF_8));
    }

    static byte[] gzip(byte[] plain) throws IOException {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (OutputStream out = new GZIPOutputStream(packed)) {
            out.write(plain);
        }
        return packed.toByteArray();
    }

    /** All rows and moves in order, a line each: time in ns, then values, or {@code !} control and position. */
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

    /** What is wrong with a recording, a line each: {@code CODE line:column found}. */
    static List<String> problems(Path file) {
        RecordingException wrong = assertThrows(RecordingException.class, () -> lines(file));
        return wrong.problems().stream().map(RecordingExamples::brief).toList();
    }

    static String brief(Problem problem) {
        return problem.code() + " " + problem.line() + ":" + problem.column() + " " + problem.found();
    }

    static void copy(Path from, Path to) throws IOException {
        Convert.run(from, to, ReadOptions.strict(), (read, total) -> {});
    }
}
