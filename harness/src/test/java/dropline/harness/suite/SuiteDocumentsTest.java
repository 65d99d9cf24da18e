package dropline.harness.suite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.harness.problem.Problem;
import dropline.harness.problem.Problems;
import dropline.harness.yaml.KeyCode;
import dropline.harness.yaml.YamlCode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Holds the chapter on suite files to the code; {@code -Ddropline.write-manual=true} writes its made parts anew. */
final class SuiteDocumentsTest {
    private static final boolean WRITE = Boolean.getBoolean("dropline.write-manual");
    private static final Path PAGE = docs().resolve("suite-file.md");
    private static final Path PROBLEMS = docs().resolve("problems");
    private static final Path EXAMPLES = PROBLEMS.resolve("suite");

    static List<String> codes() {
        return Stream.<Enum<?>[]>of(new YamlCode[] {YamlCode.NO_SUCH_FILE}, KeyCode.values(), SuiteCode.values())
                .flatMap(Stream::of)
                .map(Enum::name)
                .toList();
    }

    @ParameterizedTest
    @MethodSource("codes")
    void everyCodeHasAnExampleAndItsMessage(String code) throws IOException {
        Path example = EXAMPLES.resolve(code + ".yaml");

        SuiteFile.Result result = SuiteFile.parse(code + ".yaml", example, Files.readString(example));

        List<Problem> problems = assertInstanceOf(SuiteFile.Wrong.class, result).problems();
        assertTrue(problems.stream().allMatch(problem -> problem.code().equals(code)), problems::toString);
        assertTrue(problems.stream().allMatch(problem -> problem.line() > 0 && problem.column() > 0));
        Path message = EXAMPLES.resolve(code + ".txt");
        if (WRITE) {
            Files.writeString(message, Problems.text(problems));
        }
        assertEquals(Files.readString(message), Problems.text(problems));
    }

    @Test
    void theChapterListsEveryCode() throws IOException {
        StringBuilder table =
                new StringBuilder("| code | what is wrong | example | message |\n| --- | --- | --- | --- |\n");
        row(table, YamlCode.NO_SUCH_FILE.name(), YamlCode.NO_SUCH_FILE.words());
        for (KeyCode code : KeyCode.values()) {
            row(table, code.name(), code.words());
        }
        for (SuiteCode code : SuiteCode.values()) {
            row(table, code.name(), code.words());
        }
        Path page = PROBLEMS.resolve("suite.md");
        String text = Files.readString(page);
        int from = text.indexOf("<!-- codes -->\n") + "<!-- codes -->\n".length();
        int to = text.indexOf("<!-- end of codes -->");
        if (WRITE) {
            Files.writeString(page, text.substring(0, from) + table + text.substring(to));
            return;
        }

        assertEquals(table.toString(), text.substring(from, to));
    }

    @Test
    void theExamplesAreThoseOfTheCodesAndNoOthers() throws IOException {
        List<String> expected = Stream.concat(
                        Stream.of("flight.csv", "pit.yaml"),
                        codes().stream().flatMap(code -> Stream.of(code + ".yaml", code + ".txt")))
                .sorted()
                .toList();

        try (Stream<Path> files = Files.list(EXAMPLES)) {
            assertEquals(
                    expected,
                    files.map(file -> file.getFileName().toString()).sorted().toList());
        }
    }

    @Test
    void theExampleOfTheManualIsASuite() throws IOException {
        String page = Files.readString(PAGE);
        int from = page.indexOf("```yaml\n") + "```yaml\n".length();
        String example = page.substring(from, page.indexOf("```", from));
        // the pit here has other names, and its flight is short
        String here = example.replace("circuit.dlr", "flight.csv")
                .replace("from: 60 s", "from: 1 s")
                .replace("to: 2m", "to: 4 s")
                .replace("oil-board at 20s for 5s", "'alarm board' at 1s for 1s");

        SuiteFile.Result result = SuiteFile.parse("suite.yaml", EXAMPLES.resolve("suite.yaml"), here);

        assertInstanceOf(SuiteFile.Understood.class, result, result::toString);
    }

    private static void row(StringBuilder table, String code, String words) {
        table.append("| `").append(code).append("` | ").append(words);
        table.append(" | [file](suite/").append(code).append(".yaml) | [message](suite/");
        table.append(code).append(".txt) |\n");
    }

    static Path docs() {
        Path here = Path.of("").toAbsolutePath();
        return Files.isDirectory(here.resolve("docs")) ? here.resolve("docs") : here.resolveSibling("docs");
    }
}
