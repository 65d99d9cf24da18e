package dropline.scenarios.pieces;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import dropline.harness.recording.Convert;
import dropline.harness.recording.ReadOptions;
import dropline.harness.recording.RecordingBlock;
import dropline.harness.recording.RecordingFiles;
import dropline.harness.recording.RecordingReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;

/** The demo flight read whole: compact, as a wide table, and that table's fields alone with the library beneath it. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class Recordings {
    private final Path compact = Path.of(System.getProperty("dropline.home"), "scenarios/demo/flight.dlr");
    private Path wide = compact;

    /** Writes the table. */
    @Setup
    public void write() throws IOException {
        wide = Files.createTempFile("flight", ".csv");
        Convert.run(RecordingFiles.of(compact), wide, ReadOptions.strict(), (done, of) -> {});
    }

    /** Takes it away again. */
    @TearDown
    public void delete() throws IOException {
        Files.delete(wide);
    }

    private static double read(Path file) throws IOException {
        double last = 0;
        RecordingBlock block = new RecordingBlock();
        try (RecordingReader reader = RecordingReader.open(file, ReadOptions.strict())) {
            while (reader.read(block)) {
                last += block.rows() > 0 ? block.value(block.rows() - 1, 0) : 0;
            }
        }
        return last;
    }

    @Benchmark
    public double compactFlight() throws IOException {
        return read(compact);
    }

    @Benchmark
    public double tableOfNumbers() throws IOException {
        return read(wide);
    }

    @Benchmark
    public long tableOfTextOnly() throws IOException {
        long fields = 0;
        try (CsvReader<CsvRecord> reader = CsvReader.builder().ofCsvRecord(wide)) {
            for (CsvRecord row : reader) {
                fields += row.getFieldCount();
            }
        }
        return fields;
    }
}
