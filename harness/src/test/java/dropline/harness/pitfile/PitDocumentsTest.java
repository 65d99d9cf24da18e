package dropline.harness.pitfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Control;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Layout;
import dropline.harness.problem.Problem;
import dropline.harness.problem.Problems;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Holds the manual to the code. {@code -Ddropline.write-manual=true} writes the made parts and the messages anew; look
 * at the difference before you keep it.
 */
final class PitDocumentsTest {
    private static final boolean WRITE = Boolean.getBoolean("dropline.write-manual");
    private static final Path DOCS = docs();
    private static final Path EXAMPLES = DOCS.resolve("problems").resolve("pit-file");

    @Test
    void theReferencePageListsTheKeysAsTheyAreDeclared() throws IOException {
        assertMadePart(DOCS.resolve("pit-file.md"), "keys", ReferencePage.markdown());
    }

    @Test
    void theProblemChapterListsEveryCode() throws IOException {
        assertMadePart(DOCS.resolve("problems").resolve("README.md"), "codes", ReferencePage.problems());
    }

    @ParameterizedTest
    @EnumSource(PitCode.class)
    void everyCodeHasAnExampleAndItsMessage(PitCode code) throws IOException {
        String example = ReferencePage.example(code);
        String name = example.isEmpty() ? code + ".yaml" : example;

        PitFile.Wrong wrong = assertInstanceOf(PitFile.Wrong.class, PitFile.read(EXAMPLES.resolve(name)));
        List<Problem> problems =
                wrong.problems().stream().map(problem -> in(name, problem)).toList();

        assertTrue(problems.stream().anyMatch(problem -> problem.code().equals(code.name())), problems::toString);
        Path message = EXAMPLES.resolve(code + ".txt");
        if (WRITE) {
            Files.writeString(message, Problems.text(problems));
        }
        assertEquals(Files.readString(message), Problems.text(problems));
    }

    @Test
    void theExamplesAreThoseOfTheCodesAndNoOthers() throws IOException {
        List<String> expected = Stream.of(PitCode.values())
                .flatMap(code -> Stream.of(ReferencePage.example(code), code + ".txt"))
                .filter(name -> !name.isEmpty())
                .sorted()
                .toList();

        try (Stream<Path> files = Files.list(EXAMPLES)) {
            assertEquals(
                    expected,
                    files.map(file -> file.getFileName().toString()).sorted().toList());
        }
    }

    @Test
    void thePitInTheManualIsUnderstood() throws IOException {
        Matcher blocks = Pattern.compile("```yaml\n(.*?)```", Pattern.DOTALL)
                .matcher(Files.readString(DOCS.resolve("pit-file.md")));
        assertTrue(blocks.find());

        PitFile.Result result = PitFile.parse("manual.yaml", blocks.group(1));

        PitFile.Understood understood = assertInstanceOf(PitFile.Understood.class, result, result::toString);
        assertEquals(2, understood.pit().segments().get(0).nodes().size());
        assertEquals(3, understood.pit().signals().size());
    }

    @Test
    void thePitOfEveryKindHasEveryKindAndIsUnderstood() throws IOException {
        Matcher blocks = Pattern.compile("```yaml\n(.*?)```", Pattern.DOTALL)
                .matcher(Files.readString(DOCS.resolve("parts.md")));
        assertTrue(blocks.find());

        PitFile.Result result = PitFile.parse("parts.yaml", blocks.group(1));

        PitFile.Understood understood = assertInstanceOf(PitFile.Understood.class, result, result::toString);
        Layout layout = Layout.of(understood.pit());
        assertEquals(
                EnumSet.allOf(Indicator.Kind.class),
                layout.slots().stream()
                        .map(slot -> slot.indicator().kind())
                        .collect(Collectors.toCollection(() -> EnumSet.noneOf(Indicator.Kind.class))));
        assertEquals(
                EnumSet.allOf(Control.Kind.class),
                layout.controls().stream()
                        .map(place -> place.control().kind())
                        .collect(Collectors.toCollection(() -> EnumSet.noneOf(Control.Kind.class))));
    }

    /** The problem as it would read for a file named without its folder. */
    private static Problem in(String file, Problem problem) {
        return new Problem(
                file,
                problem.line(),
                problem.column(),
                problem.key(),
                problem.code(),
                problem.found(),
                problem.expected(),
                problem.fix());
    }

    private static void assertMadePart(Path page, String name, String made) throws IOException {
        String text = Files.readString(page);
        String begin = "<!-- " + name + " -->\n";
        int from = text.indexOf(begin) + begin.length();
        int to = text.indexOf("<!-- end of " + name + " -->");
        assertTrue(from >= begin.length() && to >= from, () -> "a page must mark its made part: page=" + page);
        if (WRITE) {
            Files.writeString(page, text.substring(0, from) + made + text.substring(to));
            return;
        }
        assertEquals(made, text.substring(from, to));
    }

    private static Path docs() {
        Path here = Path.of("").toAbsolutePath();
        return Files.isDirectory(here.resolve("docs")) ? here.resolve("docs") : here.resolveSibling("docs");
    }
}
