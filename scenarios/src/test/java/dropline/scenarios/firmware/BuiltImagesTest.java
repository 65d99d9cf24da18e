package dropline.scenarios.firmware;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.scenarios.peer.Peer;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The images that are kept here are what their sources come to, with Debian's gcc-avr 5.4.0 and avr-libc 2.0.0. */
final class BuiltImagesTest {
    @Test
    void areThoseOfTheirSources(@TempDir Path folder) throws IOException, InterruptedException {
        new Peer("avr-gcc").mustBeHere();
        new Peer("python3").mustBeHere();
        String script = Programs.FOLDER.resolve("build.sh").toAbsolutePath().toString();

        assertTrue(new Peer("bash").runs(folder, script, folder.resolve("built").toString()));

        Path kept = Programs.FOLDER.resolve("images");
        assertEquals(names(kept), names(folder.resolve("built")));
        for (String name : names(kept)) {
            if (name.endsWith(".hex")) {
                assertArrayEquals(
                        Files.readAllBytes(kept.resolve(name)),
                        Files.readAllBytes(folder.resolve("built").resolve(name)),
                        name);
            }
        }
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }
}
