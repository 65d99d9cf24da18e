package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

final class DocumentedCommandsTest {
    /**
     * A command on a line of its own, or between backquotes; what follows two spaces is a remark, what follows a bar
     * another command.
     */
    private static final Pattern COMMAND =
            Pattern.compile("(?m)(?:^ {2,4}(?:\\./)?|`)dropline ((?:(?! {2}| \\|)[^`\\n])+)");

    @Test
    void everyCommandOfReadmeManualAndHelpIsUnderstood() throws IOException {
        Path root = root();
        List<String> texts = new ArrayList<>();
        texts.add(Files.readString(root.resolve("README.md")));
        try (Stream<Path> pages = Files.walk(root.resolve("docs"))) {
            for (Path page : pages.filter(path -> path.toString().endsWith(".md"))
                    .sorted()
                    .toList()) {
                texts.add(Files.readString(page));
            }
        }
        texts.add(Captured.run("--help").out());
        for (String command : List.of(
                "new",
                "replay",
                "describe",
                "layout",
                "convert",
                "record",
                "demo",
                "faults",
                "survive",
                "check",
                "completion")) {
            texts.add(Captured.run(command, "--help").out());
        }

        int commands = 0;
        for (String text : texts) {
            Matcher matcher = COMMAND.matcher(text);
            while (matcher.find()) {
                String command = matcher.group(1).strip();
                if (!command.contains("[") && !command.startsWith("COMMAND")) {
                    commands++;
                    // a command's name alone only names it
                    String whole =
                            command.matches("[a-z-]*[a-z]") && !command.startsWith("-") ? command + " --help" : command;
                    assertDoesNotThrow(() -> parse(whole), command);
                }
            }
        }

        int found = commands;
        assertTrue(found > 20, () -> "commands found: " + found);
    }

    /**
     * The documented file stands for any of the three that are shipped; bytes and text are read by the one they are of.
     */
    @Test
    void everyCommandThatTriesALayoutWorksWithOneThatIsShipped() throws IOException {
        Path root = root();
        List<String> texts = List.of(
                Files.readString(root.resolve("docs/manual.md")),
                Files.readString(root.resolve("docs/custom-protocols.md")),
                Captured.run("layout", "--help").out());

        int commands = 0;
        for (String text : texts) {
            Matcher matcher = COMMAND.matcher(text);
            while (matcher.find()) {
                String command = matcher.group(1).strip();
                if (command.startsWith("layout mine.yaml")) {
                    commands++;
                    long fine = List.of("counted", "lines", "gaps").stream()
                            .filter(name -> runs(command, root.resolve("scenarios/layouts/" + name + ".yaml")))
                            .count();
                    assertEquals(command.contains("--decode") ? 1 : 3, fine, command);
                }
            }
        }

        int found = commands;
        assertTrue(found >= 8, () -> "commands found: " + found);
    }

    private static boolean runs(String command, Path layout) {
        String[] words = words(command);
        words[1] = layout.toString();
        return Captured.run(words).exitCode() == 0;
    }

    private static Path root() {
        Path project = Path.of("").toAbsolutePath();
        return Files.exists(project.resolve("README.md")) ? project : project.resolve("..");
    }

    static void parse(String command) {
        Commands.all(Console.unheard()).parseArgs(words(command));
    }

    /** As a shell would take it apart: double quotes keep spaces together. */
    private static String[] words(String command) {
        return Pattern.compile("\"([^\"]*)\"|(\\S+)")
                .matcher(command)
                .results()
                .map(word -> word.group(1) == null ? word.group(2) : word.group(1))
                .toArray(String[]::new);
    }
}
