package dropline.harness.fault;

import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import dropline.bus.pit.Pit;
import dropline.harness.pitfile.PitFile;
import java.nio.file.Files;
import java.nio.file.Path;

/** The demo pit, whose names the catalogue's examples use. */
final class DemoPit {
    private DemoPit() {}

    static Pit read() {
        PitFile.Result result =
                PitFile.read(root().resolve("scenarios").resolve("demo").resolve("pit.yaml"));
        return assertInstanceOf(PitFile.Understood.class, result, result::toString)
                .pit();
    }

    static Path docs() {
        return root().resolve("docs");
    }

    private static Path root() {
        Path here = Path.of("").toAbsolutePath();
        return Files.isDirectory(here.resolve("docs"))
                ? here
                : here.resolve("..").normalize();
    }
}
