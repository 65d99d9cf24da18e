package dropline.harness.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Holds a chapter of the manual on what can be wrong with a kind of file to the code: a table of the codes, and for
 * each an example and its message. {@code -Ddropline.write-manual=true} writes table and messages anew.
 */
public final class ProblemChapter {
    private static final boolean WRITE = Boolean.getBoolean("dropline.write-manual");
    private static final Path PROBLEMS = docs().resolve("problems");

    private final String name;
    private final String ending;
    private final Map<String, String> words;

    /**
     * @param name of the chapter and of the folder of its examples
     * @param ending of an example's name
     * @param words every code, in order, with what it means
     */
    public ProblemChapter(String name, String ending, Map<String, String> words) {
        this.name = name;
        this.ending = ending;
        this.words = words;
    }

    /** Where its examples are. */
    public Path examples() {
        return PROBLEMS.resolve(name);
    }

    /** The name of a code's example. */
    public String example(String code) {
        return code + ending;
    }

    /** Holds what is said of a code's example to the message beside it. */
    public void assertMessage(String code, List<Problem> problems) throws IOException {
        assertTrue(problems.stream().anyMatch(problem -> problem.code().equals(code)), problems::toString);
        Path message = examples().resolve(code + ".txt");
        if (WRITE) {
            Files.writeString(message, Problems.text(problems));
        }
        assertEquals(Files.readString(message), Problems.text(problems));
    }

    /** Holds the chapter's table to the codes. */
    public void assertTable() throws IOException {
        StringBuilder table =
                new StringBuilder("| code | what is wrong | example | message |\n| --- | --- | --- | --- |\n");
        words.forEach((code, meaning) -> table.append("| `")
                .append(code)
                .append("` | ")
                .append(meaning)
                .append(" | [file](")
                .append(name)
                .append('/')
                .append(example(code))
                .append(") | [message](")
                .append(name)
                .append('/')
                .append(code)
                .append(".txt) |\n"));
        Path page = PROBLEMS.resolve(name + ".md");
        String text = Files.readString(page);
        String begin = "<!-- codes -->\n";
        int from = text.indexOf(begin) + begin.length();
        int to = text.indexOf("<!-- end of codes -->");
        assertTrue(from >= begin.length() && to >= from, () -> "a page must mark its made part: page=" + page);
        if (WRITE) {
            Files.writeString(page, text.substring(0, from) + table + text.substring(to));
            return;
        }
        assertEquals(table.toString(), text.substring(from, to));
    }

    /** Holds the folder to one example and one message a code, and what the examples need beside them. */
    public void assertNoOtherExamples(String... beside) throws IOException {
        List<String> expected = Stream.concat(
                        Stream.of(beside),
                        words.keySet().stream().flatMap(code -> Stream.of(example(code), code + ".txt")))
                .sorted()
                .toList();
        try (Stream<Path> files = Files.list(examples())) {
            assertEquals(
                    expected,
                    files.map(file -> file.getFileName().toString()).sorted().toList());
        }
    }

    /** The manual's folder. */
    public static Path docs() {
        Path here = Path.of("").toAbsolutePath();
        return Files.isDirectory(here.resolve("docs")) ? here.resolve("docs") : here.resolveSibling("docs");
    }
}
