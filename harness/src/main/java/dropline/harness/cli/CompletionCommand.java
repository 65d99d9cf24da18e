package dropline.harness.cli;

import dropline.harness.problem.Nearest;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Iterator;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;

/** {@code dropline completion}: a script by which a shell completes Dropline's commands and options. */
@Command(
        name = "completion",
        header = "Print a script that lets your shell complete commands and options.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        parameterListHeading = "%n",
        optionListHeading = "%n",
        customSynopsis = "dropline completion bash|powershell",
        descriptionHeading = "%n",
        description = {
            "Once the shell has read the script, the Tab key completes commands, options, paths, and such values",
            "as are words of Dropline's own. The lines below do it for the shell that is open. To have it in",
            "every new one, add the line to ~/.bashrc or to the file that PowerShell names in $PROFILE."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  source <(dropline completion bash)",
            "  dropline completion powershell | Out-String | Invoke-Expression",
            "",
            "Exit codes:  0 printed   2 there is no such shell   3 our own fault"
        })
final class CompletionCommand implements Callable<Integer> {
    private static final List<String> SHELLS = List.of("bash", "powershell");

    private final Console console;

    @Parameters(
            index = "0",
            paramLabel = "SHELL",
            completionCandidates = Shells.class,
            description = "The shell that will read the script: bash or powershell.")
    @SuppressWarnings("NullAway.Init")
    private String shell;

    @Mixin
    final Debug debug = new Debug();

    CompletionCommand(Console console) {
        this.console = console;
    }

    /** The words that {@code SHELL} may be. */
    static final class Shells implements Iterable<String> {
        @Override
        public Iterator<String> iterator() {
            return SHELLS.iterator();
        }
    }

    @Override
    public Integer call() throws IOException {
        CommandSpec root = Commands.all(console).getCommandSpec();
        String script =
                switch (shell) {
                    case "bash" -> AutoComplete.bash(root.name(), root.commandLine());
                    case "powershell" -> PowerShellCompletion.of(root);
                    default -> throw unknown(shell);
                };
        String lines = script.replace("\r\n", "\n");
        console.raw().write(lines.getBytes(StandardCharsets.UTF_8));
        console.raw().flush();
        return ExitCode.PASS;
    }

    private static WrongInput unknown(String shell) {
        String near = Nearest.to(shell, SHELLS)
                .map(nearest -> "; did you mean " + nearest + "?")
                .orElse("");
        return new WrongInput("dropline: there is no completion for the shell '" + shell + "'" + near
                + "\nTry 'dropline completion --help', which names those there are.");
    }
}
