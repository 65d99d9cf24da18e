package dropline.harness.suite;

import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.harness.problem.Problem;
import dropline.harness.problem.ProblemChapter;
import dropline.harness.yaml.KeyCode;
import dropline.harness.yaml.YamlCode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Holds the chapter on suite files to the code. */
final class SuiteDocumentsTest {
    private static final Map<String, String> WORDS = words();
    private static final ProblemChapter CHAPTER = new ProblemChapter("suite", ".yaml", WORDS);
    private static final Path EXAMPLES = CHAPTER.examples();

    private static Map<String, String> words() {
        Map<String, String> words = new LinkedHashMap<>();
        words.put(YamlCode.NO_SUCH_FILE.name(), YamlCode.NO_SUCH_FILE.words());
        words.put(YamlCode.UNKNOWN_NAME.name(), YamlCode.UNKNOWN_NAME.words());
        for (KeyCode code : KeyCode.values()) {
            words.put(code.name(), code.words());
        }
        for (SuiteCode code : SuiteCode.values()) {
            words.put(code.name(), code.words());
        }
        return words;
    }

    static Collection<String> codes() {
        return WORDS.keySet();
    }

    @ParameterizedTest
    @MethodSource("codes")
    void everyCodeHasAnExampleAndItsMessage(String code) throws IOException {
        String name = CHAPTER.example(code);
        Path example = EXAMPLES.resolve(name);

        SuiteFile.Result result = SuiteFile.parse(name, example, Files.readString(example));

        List<Problem> problems = assertInstanceOf(SuiteFile.Wrong.class, result).problems();
        assertTrue(problems.stream().allMatch(problem -> problem.code().equals(code)), problems::toString);
        assertTrue(problems.stream().allMatch(problem -> problem.line() > 0 && problem.column() > 0));
        CHAPTER.assertMessage(code, problems);
    }

    @Test
    void theChapterListsEveryCode() throws IOException {
        CHAPTER.assertTable();
    }

    @Test
    void theExamplesAreThoseOfTheCodesAndNoOthers() throws IOException {
        CHAPTER.assertNoOtherExamples("flight.csv", "pit.yaml");
    }

    @Test
    void theExampleOfTheManualIsASuite() throws IOException {
        String page = Files.readString(ProblemChapter.docs().resolve("suite-file.md"));
        int from = page.indexOf("```yaml\n") + "```yaml\n".length();
        String example = page.substring(from, page.indexOf("```", from));
        // the pit here has other names, and its flight is short
        String here = example.replace("circuit.dlr", "flight.csv")
                .replace("from: 60 s", "from: 1 s")
                .replace("to: 2m", "to: 4 s")
                .replace("oil-board at 20s for 5s", "'alarm board' at 1s for 1s")
                .replace("reset at 20s", "reset at 1s");

        SuiteFile.Result result = SuiteFile.parse("suite.yaml", EXAMPLES.resolve("suite.yaml"), here);

        assertInstanceOf(SuiteFile.Understood.class, result, result::toString);
    }
}
