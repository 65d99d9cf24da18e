package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

final class CompletionTest {
    private enum Shape {
        ROUND,
        SQUARE
    }

    @ParameterizedTest
    @ValueSource(strings = {"bash", "powershell"})
    void theScriptStandsAloneOnStandardOutputAndIsTheSameEachTime(String shell) {
        Captured run = Captured.run("completion", shell);

        assertEquals(0, run.exitCode(), run::err);
        assertEquals("", run.out() + run.err());
        assertEquals(run.raw(), Captured.run("completion", shell).raw());
        assertTrue(run.raw().endsWith("\n"));
        assertTrue(run.raw().chars().allMatch(letter -> letter == '\n' || letter == '\t' || letter >= 32));
        assertTrue(run.raw().chars().allMatch(letter -> letter < 127), "a shell may read it in any code page");
    }

    @Test
    void anUnknownShellIsToldWithTheNearestOne() {
        Captured run = Captured.run("completion", "bahs");

        assertEquals(2, run.exitCode());
        assertEquals("", run.raw());
        assertEquals("""
                dropline: there is no completion for the shell 'bahs'; did you mean bash?
                Try 'dropline completion --help', which names those there are.
                """, run.err().replace("\r\n", "\n"));
    }

    @Test
    void bashAcceptsTheScript() throws IOException, InterruptedException {
        assertEquals("", bash("-n", script("bash")));
    }

    @ParameterizedTest
    @CsvSource({
        "rep, replay",
        "completion p, powershell",
        "replay --single, --single-failures",
    })
    void bashCompletes(String typed, String completed) throws IOException, InterruptedException {
        String words =
                "compopt() { :; }; COMP_WORDS=(dropline " + typed + "); COMP_CWORD=" + typed.split(" ").length + "\n";
        String asked = script("bash") + words + "_complete_dropline; printf '%s\\n' \"${COMPREPLY[@]}\"\n";

        assertEquals(completed, bash("-s", asked).strip());
    }

    @Test
    void powerShellIsOfferedEveryCommandAndEveryLongOptionOfEach() {
        String script = script("powershell");
        Map<String, CommandLine> commands = model().getSubcommands();

        assertTrue(commands.size() > 20, commands::toString);
        commands.forEach((name, command) -> {
            assertTrue(offered(script, "dropline").contains("Word = '" + name + "';"), name);
            String own = offered(script, "dropline " + name);
            command.getCommandSpec().options().stream()
                    .flatMap(option -> Arrays.stream(option.names()))
                    .filter(option -> option.startsWith("--"))
                    .forEach(option -> assertTrue(own.contains("Word = '" + option + "';"), name + " " + option));
        });
    }

    @Test
    void powerShellKnowsEveryOptionThatTakesAValue() {
        List<String> lines = script("powershell").lines().map(String::strip).toList();

        assertTrue(lines.contains("'dropline replay --html'"));
        assertTrue(lines.contains("'dropline listen -o'"));
        assertFalse(lines.contains("'dropline replay --lenient'"));
    }

    @Test
    void everyQuoteInPowerShellTextIsDoubled() {
        String script = script("powershell");

        assertTrue(script.contains("''dropline ports'' lists those there are."), script);
        List<String> open = script.lines()
                .filter(line -> line.replaceAll("'(?:[^']|'')*'", "").contains("'"))
                .toList();
        assertEquals(List.of(), open);
    }

    @Test
    void powerShellIsOfferedWordsOfOurOwnAfterAnOptionThatTakesOne() {
        CommandSpec root = CommandSpec.create().name("x");
        root.addOption(OptionSpec.builder("--shape")
                .type(Shape.class)
                .arity("1")
                .description("It\u2019s 20%% 'round'.")
                .build());

        String script = PowerShellCompletion.of(root);

        assertEquals("""
                            @{ Word = 'ROUND'; Says = 'It\u2019\u2019s 20% ''round''.' }
                            @{ Word = 'SQUARE'; Says = 'It\u2019\u2019s 20% ''round''.' }
                """.stripTrailing(), offered(script, "x --shape"));
        assertEquals(
                "            @{ Word = '--shape'; Says = 'It\u2019\u2019s 20% ''round''.' }", offered(script, "x"));
    }

    @Test
    void theBracketsOfThePowerShellScriptMatch() {
        String code = script("powershell").replaceAll("'(?:[^']|'')*'", "");

        for (String pair : List.of("()", "{}", "[]")) {
            assertEquals(count(code, pair.charAt(0)), count(code, pair.charAt(1)), pair);
        }
    }

    private static long count(String text, char letter) {
        return text.chars().filter(each -> each == letter).count();
    }

    /** The lines that offer something after the words given. */
    private static String offered(String script, String after) {
        String head = "        '" + after + "' {";
        assertTrue(script.lines().anyMatch(head::equals), head);
        return script.lines()
                .dropWhile(line -> !line.equals(head))
                .skip(1)
                .takeWhile(line -> !line.equals("        }"))
                .collect(Collectors.joining("\n"));
    }

    private static String script(String shell) {
        return Captured.run("completion", shell).raw();
    }

    private static CommandLine model() {
        return Commands.all(Console.unheard());
    }

    /** What bash says to a script, which it reads from its standard input; a bash without completion is no bash. */
    private static String bash(String option, String script) throws IOException, InterruptedException {
        assumeTrue(answers("type complete compgen"), "there is no bash here");
        Process bash =
                new ProcessBuilder("bash", option).redirectErrorStream(true).start();
        try (OutputStream in = bash.getOutputStream()) {
            in.write(script.getBytes(StandardCharsets.UTF_8));
        }
        String says = new String(bash.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, bash.waitFor(), says);
        return says;
    }

    private static boolean answers(String question) throws InterruptedException {
        try {
            return new ProcessBuilder("bash", "-c", question).start().waitFor() == 0;
        } catch (IOException missing) {
            return false;
        }
    }
}
