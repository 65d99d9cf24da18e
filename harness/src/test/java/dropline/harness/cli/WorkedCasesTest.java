package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.harness.problem.ProblemChapter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The worked cases: their suites hold, or fail as they should, and what their pages quote is what commands say. */
final class WorkedCasesTest {
    private static final Path DOCS = ProblemChapter.docs();
    private static final Path CASES = DOCS.resolveSibling("scenarios").resolve("cases");

    /** A command on a line of its own, and what it says; dots on a line of their own stand for what is left out. */
    private static final Pattern QUOTED =
            Pattern.compile("(?m)^ {4}dropline (.+)\\n\\n```text\\n((?:(?!```).*\\n)+)```$");

    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

    static Stream<String> cases() throws IOException {
        try (Stream<Path> folders = Files.list(CASES)) {
            return folders
                    .filter(Files::isDirectory)
                    .map(folder -> folder.getFileName().toString())
                    .sorted()
                    .toList()
                    .stream();
        }
    }

    @ParameterizedTest
    @MethodSource("cases")
    void whatAPageQuotesIsWhatTheCommandSays(String name) throws IOException {
        Matcher quoted = QUOTED.matcher(Files.readString(DOCS.resolve("cases/" + name + ".md")));
        int quotes = 0;
        while (quoted.find()) {
            String said = run(quoted.group(1)).out();
            int from = 0;
            for (String piece : quoted.group(2).split("(?m)^\\.\\.\\.\\n")) {
                int at = said.indexOf(piece, from);
                assertTrue(at >= 0, () -> "dropline " + quoted.group(1) + " no longer says\n" + piece + "but\n" + said);
                from = at + piece.length();
            }
            quotes++;
        }
        assertTrue(quotes > 0);
    }

    @ParameterizedTest
    @MethodSource("cases")
    void theSuiteHoldsAndThePitAsItWasDoesNot(String name) {
        Path folder = CASES.resolve(name);
        Path before = folder.resolve("before-suite.yaml");

        Captured now = Captured.run("check", folder.resolve("suite.yaml").toString());

        assertEquals(0, now.exitCode(), now::toString);
        assertTrue(now.out().contains("Nothing is worse, better, new or gone."), now::out);
        if (Files.exists(before)) {
            Captured then = Captured.run("check", before.toString());
            assertEquals(1, then.exitCode(), then::toString);
        }
    }

    @Test
    void thePagesAreThoseOfTheCasesAndTheIndexNamesThem() throws IOException {
        String index = Files.readString(DOCS.resolve("cases.md"));
        try (Stream<Path> pages = Files.list(DOCS.resolve("cases"))) {
            assertEquals(
                    cases().map(name -> name + ".md").toList(),
                    pages.map(page -> page.getFileName().toString()).sorted().toList());
        }
        assertTrue(cases().allMatch(name -> index.contains("(cases/" + name + ".md)")), index);
        assertTrue(cases().count() >= 12);
    }

    private static Captured run(String command) {
        List<String> words = new ArrayList<>();
        Matcher word = WORD.matcher(command);
        while (word.find()) {
            String text = word.group(1) == null ? word.group(2) : word.group(1);
            words.add(text.startsWith("scenarios/") ? DOCS.resolveSibling(text).toString() : text);
        }
        return Captured.run(words.toArray(new String[0]));
    }
}
