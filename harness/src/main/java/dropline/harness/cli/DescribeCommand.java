package dropline.harness.cli;

import dropline.harness.describe.Describe;
import dropline.harness.describe.FiguresText;
import dropline.harness.pitfile.PitFile;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
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
            "follow from them (character time, the shortest poll cycle, load). All problems are listed in one go."
        },
        footerHeading = "%nExample:%n",
        footer = "  dropline describe pit.yaml")
final class DescribeCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(index = "0", paramLabel = "PIT", description = "The pit file (YAML).")
    @SuppressWarnings("NullAway.Init")
    private Path pit;

    @Mixin
    final Debug debug = new Debug();

    DescribeCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        PitFile.Understood understood = PitFiles.read(pit);
        console.out().print(Describe.table(understood.pit()));
        console.out().print(FiguresText.of(understood.figures()));
        return ExitCode.PASS;
    }
}
