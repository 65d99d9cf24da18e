package dropline.scenarios.replay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Same pit, same recording, same seed: the same trace, wherever it runs. The stretch is take-off and early climb. */
final class SameRunTest {
    private static final long FROM = 170;
    private static final long TO = 230;

    @TempDir
    private Path temp;

    @Test
    void twoRunsHaveOneDigest() throws IOException {
        assertEquals(digest(7, 1), digest(7, 1));
    }

    @Test
    void numberOfThreadsDoesNotMatter() throws IOException {
        assertEquals(digest(7, 1), digest(7, 2));
        assertEquals(digest(7, 1), digest(7, 3));
    }

    @Test
    void anotherSeedIsAnotherRun() throws IOException {
        assertNotEquals(digest(7, 1), digest(8, 1));
    }

    @Test
    void secondJavaRuntimeHasTheSameDigest() throws Exception {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        Path output = temp.resolve("output");
        Process process = new ProcessBuilder(List.of(
                        java, "-cp", System.getProperty("java.class.path"), DigestOfTheDemo.class.getName(), "7"))
                .redirectErrorStream(true)
                .redirectOutput(output.toFile())
                .start();

        boolean ended = process.waitFor(3, TimeUnit.MINUTES);
        if (!ended) {
            process.destroyForcibly();
        }

        assertTrue(ended, "the second runtime must end");
        assertEquals(
                digest(7, 1), Files.readString(output, StandardCharsets.UTF_8).strip());
    }

    static String digest(long seed, int threads) throws IOException {
        return String.format("%016x", Shipped.demo(FROM, TO, seed, threads).digest());
    }
}
