package dropline.harness.cli;

import dropline.harness.recording.Convert;
import dropline.harness.recording.ReadOptions;
import dropline.harness.recording.RecordingFiles;
import dropline.harness.replay.Progress;
import dropline.harness.report.Figures;
import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code dropline convert}: from one form of recording to the other. */
@Command(
        name = "convert",
        header = "Turn a recording of one form into another.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        parameterListHeading = "%n",
        optionListHeading = "%n",
        descriptionHeading = "%n",
        description = {
            "Turns a recording of any form into another. How it begins shows what is read; the name says what is",
            "written: .dlr is Dropline's compact form, .csv a table with a column for each signal, .long.csv a",
            "line for each change, .jsonl a JSON object a line; .gz behind any of them packs it."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline convert flight.csv flight.dlr",
            "  dropline convert flight.dlr flight.long.csv.gz",
            "  dropline convert log.jsonl flight.dlr --controls moves.csv"
        })
final class ConvertCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(index = "0", paramLabel = "IN", description = "The recording to read.")
    @SuppressWarnings("NullAway.Init")
    private Path in;

    @Parameters(index = "1", paramLabel = "OUT", description = "The recording to write.")
    @SuppressWarnings("NullAway.Init")
    private Path out;

    @Option(
            names = "--controls",
            paramLabel = "FILE",
            description = "Add the controls' moves from this file: time, control, value in each line.")
    private @Nullable Path controls;

    @Option(names = "--lenient", description = "Skip bad rows and count them, instead of stopping.")
    private boolean lenient;

    @Mixin
    final Debug debug = new Debug();

    ConvertCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws IOException {
        RecordingFiles files = new RecordingFiles(in, controls);
        files.paths().forEach(file -> InputFiles.mustExist(file, "recording"));
        OutputFiles.mustBeWritable(out);
        ReadOptions options = lenient ? ReadOptions.skippingBadRows() : ReadOptions.strict();
        Progress bar = ProgressBar.on(console);
        Convert.Result result;
        try {
            result = Convert.run(
                    files, out, options, (read, total) -> bar.reached(0, (double) read / Math.max(1, total)));
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
