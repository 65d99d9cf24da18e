package dropline.harness.cli;

import dropline.harness.diff.TraceDiff;
import dropline.harness.diff.TraceException;
import dropline.harness.report.Figures;
import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code dropline diff}: the first event in which two traces differ. */
@Command(
        name = "diff",
        header = "Name the first event in which two traces differ.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        parameterListHeading = "%n",
        optionListHeading = "%n",
        descriptionHeading = "%n",
        description = {
            "Compares two traces of the same pit, as replay --trace writes them, event by event, and says",
            "where they part: when, on which segment, and what each of them has there."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline replay pit.yaml flight.dlr --trace before.trace",
            "  dropline diff before.trace after.trace",
            "",
            "Exit codes:  0 the same   1 they differ   2 the input is wrong   3 our own fault"
        })
final class DiffCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(index = "0", paramLabel = "TRACE", description = "The one trace.")
    @SuppressWarnings("NullAway.Init")
    private Path first;

    @Parameters(index = "1", paramLabel = "TRACE", description = "The other.")
    @SuppressWarnings("NullAway.Init")
    private Path second;

    @Mixin
    final Debug debug = new Debug();

    DiffCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws IOException {
        InputFiles.mustExist(first, "trace");
        InputFiles.mustExist(second, "trace");
        TraceDiff diff;
        try {
            diff = TraceDiff.of(first, second);
        } catch (TraceException wrong) {
            throw new WrongInput("dropline: " + wrong.getMessage(), wrong);
        }
        if (diff.same()) {
            console.out().println("The same: " + Figures.plural(diff.events(), "event") + ".");
            return ExitCode.PASS;
        }
        console.out().println("The first " + Figures.plural(diff.events(), "event") + " are the same.");
        diff.divergence().forEach(console.out()::println);
        return ExitCode.FAIL;
    }
}
