package dropline.harness.sheet;

import dropline.harness.problem.ProblemChapter;
import java.io.IOException;
import java.nio.file.Files;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Holds the chapter on spreadsheets to the code. */
final class SheetDocumentsTest {
    private static final Map<String, String> WORDS = words();
    private static final ProblemChapter CHAPTER = new ProblemChapter("sheet", ".csv", WORDS);

    private static Map<String, String> words() {
        Map<String, String> words = new LinkedHashMap<>();
        for (SheetCode code : SheetCode.values()) {
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

        CHAPTER.assertMessage(
                code,
                Sheet.read(name, Files.readAllBytes(CHAPTER.examples().resolve(name)))
                        .problems());
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
