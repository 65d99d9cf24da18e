package dropline.harness.layout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.harness.problem.Problem;
import dropline.harness.problem.Problems;
import dropline.harness.yaml.KeyCode;
import dropline.protocol.custom.Flaw;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Holds the chapter on layout files to the code; {@code -Ddropline.write-manual=true} writes its made parts anew. */
final class LayoutDocumentsTest {
    private static final boolean WRITE = Boolean.getBoolean("dropline.write-manual");
    private static final Path PROBLEMS = docs().resolve("problems");
    private static final Path EXAMPLES = PROBLEMS.resolve("layout");

    static List<String> codes() {
        return Stream.<Enum<?>[]>of(KeyCode.values(), LayoutCode.values(), Flaw.Code.values())
                .flatMap(Stream::of)
                .map(Enum::name)
                .toList();
    }

    @ParameterizedTest
    @MethodSource("codes")
    void everyCodeHasAnExampleAndItsMessage(String code) throws IOException {
        String name = code + ".yaml";

        List<Problem> problems = said(name);

        assertTrue(problems.stream().anyMatch(problem -> problem.code().equals(code)), problems::toString);
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
        for (KeyCode code : KeyCode.values()) {
            row(table, code.name(), code.words());
        }
        for (LayoutCode code : LayoutCode.values()) {
            row(table, code.name(), code.words());
        }
        for (Flaw.Code code : Flaw.Code.values()) {
            row(table, code.name(), code.words());
        }
        Path page = PROBLEMS.resolve("layout.md");
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
        List<String> expected = codes().stream()
                .flatMap(code -> Stream.of(code + ".yaml", code + ".txt"))
                .sorted()
                .toList();

        try (Stream<Path> files = Files.list(EXAMPLES)) {
            assertEquals(
                    expected,
                    files.map(file -> file.getFileName().toString()).sorted().toList());
        }
    }

    private static void row(StringBuilder table, String code, String words) {
        table.append("| `").append(code).append("` | ").append(words);
        table.append(" | [file](layout/").append(code).append(".yaml) | [message](layout/");
        table.append(code).append(".txt) |\n");
    }

    /** All that is said of an example, problems or cautions, as if its file stood here. */
    private static List<Problem> said(String name) throws IOException {
        LayoutFile.Result result = LayoutFile.parse(name, Files.readString(EXAMPLES.resolve(name)));
        List<Problem> said = new ArrayList<>();
        if (result instanceof LayoutFile.Wrong wrong) {
            said.addAll(wrong.problems());
        } else {
            said.addAll(assertInstanceOf(LayoutFile.Understood.class, result).cautions());
        }
        return said;
    }

    private static Path docs() {
        Path here = Path.of("").toAbsolutePath();
        return Files.isDirectory(here.resolve("docs")) ? here.resolve("docs") : here.resolveSibling("docs");
    }
}
