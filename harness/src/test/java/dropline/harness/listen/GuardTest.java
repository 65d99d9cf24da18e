package dropline.harness.listen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.harness.link.Arrival;
import dropline.protocol.Bytes;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class GuardTest {
    private static final long SECOND = 1_000_000_000L;

    @TempDir
    private Path folder;

    /** A byte a second for a hundred seconds; trouble at 40 s and at 45 s, and at 80 s. */
    private Guard guarded(long mostBytes) throws IOException {
        Guard guard = new Guard(folder, 3 * SECOND, 5 * SECOND, mostBytes);
        for (int second = 0; second < 100; second++) {
            int troubles = (second >= 40 ? 1 : 0) + (second >= 45 ? 1 : 0) + (second >= 80 ? 1 : 0);
            guard.take(new Arrival.Received(second * SECOND, Bytes.of(second)), troubles);
        }
        guard.close();
        return guard;
    }

    private List<List<String>> captures() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.sorted().map(GuardTest::lines).toList();
        }
    }

    private static List<String> lines(Path file) {
        try {
            return Files.readAllLines(file);
        } catch (IOException unread) {
            throw new AssertionError(unread);
        }
    }

    @Test
    void onlyTheTimeAroundTroubleIsKept() throws IOException {
        Guard guard = guarded(1_000_000);

        List<List<String>> captures = captures();
        assertEquals(2, guard.files());
        assertEquals(2, captures.size());
        assertEquals(37 * SECOND + " 25", captures.get(0).get(1));
        assertEquals(50 * SECOND + " 32", captures.get(0).get(captures.get(0).size() - 1));
        assertEquals(77 * SECOND + " 4D", captures.get(1).get(1));
        assertEquals(85 * SECOND + " 55", captures.get(1).get(captures.get(1).size() - 1));
    }

    @Test
    void noMoreIsKeptThanTheDiskMayTake() throws IOException {
        Guard guard = guarded(100);

        assertTrue(guard.isFull());
        assertEquals(1, captures().size());
        assertTrue(captures().get(0).size() < 10, captures().toString());
    }
}
