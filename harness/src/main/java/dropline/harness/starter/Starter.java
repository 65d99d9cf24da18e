package dropline.harness.starter;

import dropline.bus.pit.Pit;
import dropline.harness.pitfile.PitFile;
import dropline.harness.problem.Problem;
import dropline.harness.sheet.Sheet;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Makes a folder to start from: a pit file, an invented flight to replay through it, and a suite of both. */
public final class Starter {
    /** The pit file's name in the folder. */
    public static final String PIT = "pit.yaml";

    /** The recording's name in the folder. */
    public static final String FLIGHT = "flight.csv";

    /** The suite's name in the folder. */
    public static final String SUITE = "suite.yaml";

    private static final String EXAMPLE = "example.yaml";
    private static final int SECONDS = 60;

    private Starter() {}

    /**
     * What was made.
     *
     * @param pit the pit as its file describes it; null where the file has problems, and then there is nothing else
     * @param problems what is wrong with the pit file
     */
    public record Made(@Nullable Pit pit, List<Problem> problems) {
        public Made {
            problems = List.copyOf(problems);
        }
    }

    /** Writes a small example to go on from. */
    public static Made example(Path folder) throws IOException {
        try (InputStream in = Starter.class.getResourceAsStream(EXAMPLE)) {
            if (in == null) {
                throw new AssertionError("the example must lie beside its class: file=" + EXAMPLE);
            }
            return write(folder, new String(in.readAllBytes(), StandardCharsets.UTF_8));
        }
    }

    /**
     * Writes a pit made from a spreadsheet.
     *
     * @param sheet with at least one row
     * @param from the spreadsheet's name, for the pit file's comments
     */
    public static Made fromSheet(Path folder, Sheet sheet, String from) throws IOException {
        Path last = folder.toAbsolutePath().normalize().getFileName();
        String name = last == null ? "pit" : last.toString();
        return write(folder, PitText.of(Draft.of(sheet.rows()), name, from, sheet.leftOut()));
    }

    private static Made write(Path folder, String text) throws IOException {
        Files.createDirectories(folder);
        Path file = folder.resolve(PIT);
        Files.writeString(file, text, StandardCharsets.UTF_8);
        PitFile.Result result = PitFile.read(file);
        if (result instanceof PitFile.Wrong wrong) {
            return new Made(null, wrong.problems());
        }
        if (result instanceof PitFile.Understood understood) {
            new InventedFlight(understood.pit()).write(folder.resolve(FLIGHT), SECONDS);
            Files.writeString(folder.resolve(SUITE), FirstSuite.of(understood.pit()), StandardCharsets.UTF_8);
            return new Made(understood.pit(), List.of());
        }
        throw new AssertionError(result);
    }
}
