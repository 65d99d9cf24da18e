package dropline.harness.stream;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.harness.problem.Problem;
import dropline.harness.problem.ProblemChapter;
import dropline.harness.yaml.KeyCode;
import java.io.IOException;
import java.nio.file.Files;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Holds the chapter on datagram files to the code. */
final class DatagramDocumentsTest {
    private static final Map<String, String> WORDS = words();
    private static final ProblemChapter CHAPTER = new ProblemChapter("datagram", ".yaml", WORDS);

    private static Map<String, String> words() {
        Map<String, String> words = new LinkedHashMap<>();
        for (KeyCode code : KeyCode.values()) {
            words.put(code.name(), code.words());
        }
        for (DatagramCode code : DatagramCode.values()) {
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
        String text = Files.readString(CHAPTER.examples().resolve(name));

        List<Problem> problems = assertThrows(DatagramException.class, () -> DatagramLayout.parse(name, text))
                .problems();

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
}
