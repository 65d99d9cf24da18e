package dropline.harness.cli;

import dropline.harness.recording.Convert;
import dropline.harness.recording.ReadOptions;
import dropline.harness.replay.Progress;
import dropline.harness.report.Figures;
import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code dropline convert}: from one form of recording to the other. */
@Command(
        name = "convert",
        header = "Turn a CSV recording into the compact form, or back.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        parameterListHeading = "%n",
        optionListHeading = "%n",
        descriptionHeading = "%n",
        description = {
            "Turns a CSV recording into Dropline's compact form, or back. The names say which: .dlr is the",
            "compact form, .csv is CSV; .gz behind either packs it."
        },
        footerHeading = "%nExamples:%n",
        footer = {"  dropline convert flight.csv flight.dlr", "  dropline convert flight.dlr flight.csv.gz"})
final class ConvertCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(index = "0", paramLabel = "IN", description = "The recording to read.")
    @SuppressWarnings("NullAway.Init")
    private Path in;

    @Parameters(index = "1", paramLabel = "OUT", description = "The recording to write.")
    @SuppressWarnings("NullAway.Init")
    private Path out;

    @Option(names = "--lenient", description = "Skip bad rows and count them, instead of stopping.")
    private boolean lenient;

    @Mixin
    final Debug debug = new Debug();

    ConvertCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws IOException {
        InputFiles.mustExist(in, "recording");
        OutputFiles.mustBeWritable(out);
        ReadOptions options = lenient ? ReadOptions.skippingBadRows() : ReadOptions.strict();
        Progress bar = ProgressBar.on(console);
        Convert.Result result;
        try {
            result = Convert.run(in, out, options, (read, total) -> bar.reached(0, (double) read / Math.max(1, total)));
        } finally {
            ProgressBar.end(bar);
        }
        result.losses().forEach(loss -> console.err().println("dropline: " + loss));
        if (result.skippedRows() > 0) {
            console.err().println("dropline: left out for being wrong: " + Figures.plural(result.skippedRows(), "row"));
        }
        console.out()
                .println("Wrote " + out + ": " + Figures.plural(result.rows(), "row") + ", "
                        + Figures.plural(result.moves(), "control move") + ".");
        return ExitCode.PASS;
    }
}
