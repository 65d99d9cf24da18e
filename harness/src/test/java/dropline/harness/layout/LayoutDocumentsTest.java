package dropline.harness.layout;

import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.harness.problem.Problem;
import dropline.harness.problem.ProblemChapter;
import dropline.harness.yaml.KeyCode;
import dropline.protocol.custom.Flaw;
import java.io.IOException;
import java.nio.file.Files;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Holds the chapter on layout files to the code. */
final class LayoutDocumentsTest {
    private static final Map<String, String> WORDS = words();
    private static final ProblemChapter CHAPTER = new ProblemChapter("layout", ".yaml", WORDS);

    private static Map<String, String> words() {
        Map<String, String> words = new LinkedHashMap<>();
        for (KeyCode code : KeyCode.values()) {
            words.put(code.name(), code.words());
        }
        for (LayoutCode code : LayoutCode.values()) {
            words.put(code.name(), code.words());
        }
        for (Flaw.Code code : Flaw.Code.values()) {
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
        List<Problem> problems = said(CHAPTER.example(code));

        assertTrue(problems.stream().allMatch(problem -> problem.line() > 0 && problem.column() > 0));
        CHAPTER.assertMessage(code, problems);
    }

    @Test
    void theChapterListsEveryCode() throws IOException {
        CHAPTER.assertTable();
    }

    @Test
    void theExamplesAreThoseOfTheCodesAndNoOthers() throws IOException {
        CHAPTER.assertNoOtherExamples();
    }

    /** All that is said of an example, problems or cautions, as if its file stood here. */
    private static List<Problem> said(String name) throws IOException {
        String text = Files.readString(CHAPTER.examples().resolve(name));
        LayoutFile.Result result = LayoutFile.parse(name, text);
        return result instanceof LayoutFile.Wrong wrong
                ? wrong.problems()
                : assertInstanceOf(LayoutFile.Understood.class, result).cautions();
    }
}
