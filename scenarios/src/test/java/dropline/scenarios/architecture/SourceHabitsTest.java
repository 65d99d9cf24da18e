package dropline.scenarios.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToLongFunction;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Habits a compiler does not check. What breaks one stands in {@code exceptions.txt} with its present size, and that
 * list may only shrink: an entry that is no longer needed, or larger than needed, fails as well.
 */
final class SourceHabitsTest {
    private static final int MAIN_FILE_LINES = 350;
    private static final int TEST_FILE_LINES = 500;
    private static final int METHOD_LINES = 60;
    private static final int LINE_LENGTH = 120;

    /** Written in halves, so that this file does not find itself. */
    private static final Pattern NOT_IN_SOURCES = Pattern.compile(
            "\\b(TO" + "DO|FIX" + "ME|X" + "XX)\\b|[Pp]lace" + "holder|Thread\\.sl" + "eep|print" + "StackTrace");

    private static final Pattern MACHINE_PATH = Pattern.compile(
            "/wo" + "rk/|/ro" + "ot/|/ho" + "me/[a-z]|[A-Z]:\\\\Us" + "ers\\\\|repo1?\\.maven\\.ap" + "ache");
    private static final Pattern VAGUE_NAME = Pattern.compile(".*(Manager|Helper|Utils?|Impl)");
    private static final Pattern NO_FACT = Pattern.compile("test.*|.*[sS]hould.*");

    @Test
    void allSourcesWereFound() {
        assertTrue(Sources.java("main").size() > 40, () -> "found=" + Sources.java("main"));
        assertTrue(Sources.java("test").size() > 20, () -> "found=" + Sources.java("test"));
        assertTrue(Sources.texts().size() > 70, () -> "found=" + Sources.texts());
    }

    @Test
    void filesStayShort() {
        Map<String, Long> found = new TreeMap<>();
        ToLongFunction<Path> length = path -> Sources.lines(path).size();
        Sources.java("main")
                .forEach(path -> note(found, Sources.name(path), length.applyAsLong(path), MAIN_FILE_LINES));
        Sources.java("test")
                .forEach(path -> note(found, Sources.name(path), length.applyAsLong(path), TEST_FILE_LINES));

        assertOnlyExceptions("file-length", found);
    }

    @Test
    void methodsStayShort() {
        Map<String, Long> found = new TreeMap<>();
        for (MethodLengths.Found method : MethodLengths.of(allJava())) {
            note(found, Sources.name(method.file()) + "#" + method.method(), method.lines(), METHOD_LINES);
        }

        assertOnlyExceptions("method-length", found);
    }

    @Test
    void linesFitTheWidth() {
        Map<String, Long> found = new TreeMap<>();
        for (Path path : allJava()) {
            long widest =
                    Sources.lines(path).stream().mapToLong(String::length).max().orElse(0);
            note(found, Sources.name(path), widest, LINE_LENGTH);
        }

        assertOnlyExceptions("line-length", found);
    }

    @Test
    void everyPackageHasItsFrontPage() {
        List<String> missing = allJava().stream()
                .map(Path::getParent)
                .distinct()
                .filter(folder -> !Files.exists(folder.resolve("package-info.java")))
                .map(Sources::name)
                .filter(folder -> !frontPageStandsInMain(folder))
                .sorted()
                .toList();

        assertEquals(List.of(), missing);
    }

    @Test
    void everyFrontPageIsNullMarked() {
        List<String> unmarked = allJava().stream()
                .filter(path -> path.endsWith("package-info.java"))
                .filter(path -> !Sources.lines(path).contains("@NullMarked"))
                .map(Sources::name)
                .toList();

        assertEquals(List.of(), unmarked);
    }

    @Test
    void typesSayWhatTheyAre() {
        List<String> vague = allJava().stream()
                .filter(path -> VAGUE_NAME
                        .matcher(path.getFileName().toString().replace(".java", ""))
                        .matches())
                .map(Sources::name)
                .toList();

        assertEquals(List.of(), vague);
    }

    @Test
    void namesOfTestsAreFacts() {
        List<String> others = MethodLengths.of(Sources.java("test")).stream()
                .filter(MethodLengths.Found::isFact)
                .filter(method -> NO_FACT.matcher(method.method()).matches())
                .map(method -> Sources.name(method.file()) + "#" + method.method())
                .toList();

        assertEquals(List.of(), others);
    }

    @Test
    void sourcesAreFinished() {
        assertEquals(List.of(), linesMatching(allJava(), NOT_IN_SOURCES));
    }

    @Test
    void nothingNamesThePathsOfOneMachine() {
        assertEquals(List.of(), linesMatching(Sources.texts(), MACHINE_PATH));
    }

    private static boolean frontPageStandsInMain(String testFolder) {
        return Files.exists(Path.of("..", testFolder.replace("/src/test/", "/src/main/"), "package-info.java"));
    }

    private static List<Path> allJava() {
        return Stream.concat(Sources.java("main").stream(), Sources.java("test").stream())
                .toList();
    }

    private static List<String> linesMatching(List<Path> files, Pattern pattern) {
        List<String> found = new ArrayList<>();
        for (Path file : files) {
            List<String> lines = Sources.lines(file);
            for (int i = 0; i < lines.size(); i++) {
                if (pattern.matcher(lines.get(i)).find()) {
                    found.add(Sources.name(file) + ":" + (i + 1) + ": "
                            + lines.get(i).strip());
                }
            }
        }
        return found;
    }

    private static void note(Map<String, Long> found, String where, long size, long limit) {
        if (size > limit) {
            found.merge(where, size, Math::max);
        }
    }

    private static void assertOnlyExceptions(String rule, Map<String, Long> found) {
        assertEquals(asText(exceptions(rule)), asText(found), rule + ": exceptions.txt beside what was found");
    }

    /** Lines of {@code rule where size}; {@code #} starts a comment. */
    private static Map<String, Long> exceptions(String rule) {
        Map<String, Long> exceptions = new TreeMap<>();
        for (String line :
                Sources.lines(Path.of("src/test/resources/dropline/scenarios/architecture/exceptions.txt"))) {
            String[] parts = line.split(" ", 3);
            if (parts.length == 3 && parts[0].equals(rule)) {
                exceptions.put(parts[1], Long.valueOf(parts[2]));
            }
        }
        return exceptions;
    }

    private static String asText(Map<String, Long> sizes) {
        return sizes.entrySet().stream()
                .map(entry -> String.format(Locale.ROOT, "%s %d", entry.getKey(), entry.getValue()))
                .collect(Collectors.joining("\n"));
    }
}
