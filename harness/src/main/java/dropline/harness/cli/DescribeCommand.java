package dropline.harness.cli;

import dropline.harness.describe.Describe;
import dropline.harness.recording.RecordingReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code dropline describe}: what was understood of a pit, or what a recording shows. */
@Command(
        name = "describe",
        header = "Say what was understood of a pit file, or what a recording holds.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        parameterListHeading = "%n",
        optionListHeading = "%n",
        sortOptions = false,
        customSynopsis = {
            "dropline describe PIT",
            "dropline describe RECORDING [--controls FILE] [--write-signals FILE] [--json FILE|-] [--lenient]"
        },
        descriptionHeading = "%n",
        description = {
            "Reads a pit file and says what was understood of it: segments, nodes, panels, and the figures that",
            "follow from them (character time, the shortest poll cycle, load). All problems are listed in one go.",
            "",
            "Reads a recording through and says how long it is, how often its states come, and of each column",
            "its range, how it changes and what it looks like: a switch, digits, a needle. Which of the two it is",
            "is seen from the file."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline describe pit.yaml",
            "  dropline describe flight.csv",
            "  dropline describe flight.csv --write-signals signals.yaml"
        })
final class DescribeCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(index = "0", paramLabel = "FILE", description = "The pit file (YAML), or the recording.")
    @SuppressWarnings("NullAway.Init")
    private Path file;

    @Option(
            names = "--controls",
            paramLabel = "FILE",
            description = "Take the controls' moves from this file: time, control, value in each line.")
    private @Nullable Path controls;

    @Option(
            names = "--write-signals",
            paramLabel = "FILE",
            description = "Write a signals: section for a pit file, ready to edit. FILE must not be there yet.")
    private @Nullable Path signals;

    @Option(names = "--lenient", description = "Skip bad rows of the recording and count them, instead of stopping.")
    private boolean lenient;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private JsonOutput json;

    @Mixin
    final Debug debug = new Debug();

    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec command;

    DescribeCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws IOException {
        if (Files.isRegularFile(file) && RecordingReader.isMeant(file)) {
            new RecordingDescription(console, file, controls, lenient, signals, json).run();
        } else {
            mustBeForAPit();
            console.out().print(Describe.table(PitFiles.read(file).pit()));
        }
        return ExitCode.PASS;
    }

    private void mustBeForAPit() {
        if (signals != null || controls != null || lenient || json.isAsked()) {
            throw new ParameterException(
                    command.commandLine(),
                    "--write-signals, --controls, --json and --lenient are for recordings, and " + file + " is none");
        }
    }
}
