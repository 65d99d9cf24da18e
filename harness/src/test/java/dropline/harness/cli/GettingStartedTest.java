package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.harness.problem.ProblemChapter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The commands of the manual's first page, one after the other as a reader gives them, in an empty folder. */
final class GettingStartedTest {
    private static final Pattern COMMAND = Pattern.compile("(?m)^ {4}dropline (.+)$");

    @Test
    void everyCommandOfTheFirstPageDoesWhatItSays(@TempDir Path folder) throws IOException {
        String page = Files.readString(ProblemChapter.docs().resolve("getting-started.md"));
        List<String> commands = COMMAND.matcher(page)
                .results()
                .map(command -> command.group(1))
                // it writes where it is started, and has tests of its own
                .filter(command -> !command.equals("demo"))
                .toList();

        assertTrue(commands.size() >= 7, commands::toString);
        for (String command : commands) {
            Captured run = Captured.run(Stream.of(command.split(" "))
                    .map(word ->
                            word.startsWith("my-pit") ? folder.resolve(word).toString() : word)
                    .toArray(String[]::new));
            assertEquals(0, run.exitCode(), () -> "dropline " + command + "\n" + run);
        }
        assertTrue(Files.exists(folder.resolve("my-pit/suite.accepted.yaml")));
    }
}
