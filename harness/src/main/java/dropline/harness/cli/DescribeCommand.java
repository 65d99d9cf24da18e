package dropline.harness.cli;

import dropline.bus.pit.Pit;
import dropline.harness.describe.Describe;
import dropline.harness.describe.FiguresText;
import dropline.harness.pitfile.PitFile;
import dropline.harness.recording.RecordingReader;
import dropline.harness.wiring.Cards;
import dropline.harness.wiring.WiringSheet;
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
            "For the bench: --wiring prints what to wire where, with terminators, bias, supplies and labels to",
            "cut out; --cards writes a page of cards, one for the back of each board.",
            "",
            "Reads a recording through and says how long it is, how often its states come, and of each column",
            "its range, how it changes and what it looks like: a switch, digits, a needle. Which of the two it is",
            "is seen from the file."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline describe pit.yaml",
            "  dropline describe pit.yaml --wiring",
            "  dropline describe pit.yaml --cards cards.html",
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

    @Option(names = "--wiring", description = "Print the wiring sheet instead.")
    private boolean wiring;

    @Option(
            names = "--cards",
            paramLabel = "FILE",
            description = "Write a card for each board, to print on A4 and cut out, as one HTML file.")
    private @Nullable Path cards;

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
            mustBeForARecording();
            new RecordingDescription(console, file, controls, lenient, signals, json).run();
        } else {
            mustBeForAPit();
            pit();
        }
        return ExitCode.PASS;
    }

    private void pit() throws IOException {
        OutputFiles.mustBeWritable(cards, file);
        PitFile.Understood understood = PitFiles.read(file, "pit file or recording");
        Pit pit = understood.pit();
        if (wiring) {
            console.out().print(WiringSheet.of(pit));
        } else if (cards == null) {
            console.out().print(Describe.table(pit));
            console.out().print(FiguresText.of(understood.figures()));
        }
        if (cards != null) {
            OutputFiles.write(cards, Cards.html(pit));
            console.err().println("Cards written to " + cards + "; print them on A4 at 100 %.");
        }
    }

    private void mustBeForARecording() {
        if (wiring || cards != null) {
            throw new ParameterException(
                    command.commandLine(), "--wiring and --cards are for pit files, and " + file + " is a recording");
        }
    }

    private void mustBeForAPit() {
        if (signals != null || controls != null || lenient || json.isAsked()) {
            throw new ParameterException(
                    command.commandLine(),
                    "--write-signals, --controls, --json and --lenient are for recordings, and " + file + " is none");
        }
    }
}
