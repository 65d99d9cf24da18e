package dropline.harness.cli;

import dropline.bus.pit.Pit;
import dropline.harness.describe.Describe;
import dropline.harness.wiring.Cards;
import dropline.harness.wiring.WiringSheet;
import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code dropline describe}: what was understood of a pit. */
@Command(
        name = "describe",
        header = "Say what was understood of a pit file, with derived figures.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        parameterListHeading = "%n",
        optionListHeading = "%n",
        descriptionHeading = "%n",
        description = {
            "Reads a pit file and says what was understood of it: segments, nodes, panels, and the figures that",
            "follow from them (character time, the shortest poll cycle, load). All problems are listed in one go.",
            "",
            "For the bench: --wiring prints what to wire where, with terminators, bias, supplies and labels to cut",
            "out; --cards writes a page of cards, one for the back of each board."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline describe pit.yaml",
            "  dropline describe pit.yaml --wiring",
            "  dropline describe pit.yaml --cards cards.html"
        })
final class DescribeCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(index = "0", paramLabel = "PIT", description = "The pit file (YAML).")
    @SuppressWarnings("NullAway.Init")
    private Path pit;

    @Option(names = "--wiring", description = "Print the wiring sheet instead.")
    private boolean wiring;

    @Option(
            names = "--cards",
            paramLabel = "FILE",
            description = "Write a card for each board, to print on A4 and cut out, as one HTML file.")
    private @Nullable Path cards;

    @Mixin
    final Debug debug = new Debug();

    DescribeCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws IOException {
        OutputFiles.mustBeWritable(cards, pit);
        Pit understood = PitFiles.read(pit).pit();
        if (wiring) {
            console.out().print(WiringSheet.of(understood));
        } else if (cards == null) {
            console.out().print(Describe.table(understood));
        }
        if (cards != null) {
            OutputFiles.write(cards, Cards.html(understood));
            console.err().println("Cards written to " + cards + "; print them on A4 at 100 %.");
        }
        return ExitCode.PASS;
    }
}
