package dropline.harness.cli;

import dropline.bus.pit.Pit;
import dropline.harness.recording.PitFeed;
import dropline.harness.recording.ReadOptions;
import dropline.harness.recording.RecordingFiles;
import dropline.harness.replay.Source;
import dropline.harness.report.HtmlReport;
import dropline.harness.report.TextReport;
import dropline.harness.verdict.ReplayResult;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code dropline demo}: the demo flight through the demo pit. */
@Command(
        name = "demo",
        header = "Replay the demo flight through the demo pit and write the report.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        parameterListHeading = "%n",
        optionListHeading = "%n",
        descriptionHeading = "%n",
        description = {
            "Replays the demo flight through the demo pit, prints the verdict, and writes the report",
            "dropline-demo.html into the current folder. Ends with exit code 0 although panels miss their budget."
        },
        footerHeading = "%nExample:%n",
        footer = "  dropline demo")
final class DemoCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    final Debug debug = new Debug();

    DemoCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws IOException {
        Path demo = Path.of(System.getProperty("dropline.home", "."), "scenarios", "demo");
        Path flight = demo.resolve("flight.dlr");
        Path report = Path.of("dropline-demo.html");
        InputFiles.mustExist(demo.resolve("pit.yaml"), "demo pit");
        InputFiles.mustExist(flight, "demo flight");
        OutputFiles.mustBeWritable(report);
        Pit pit = PitFiles.read(demo.resolve("pit.yaml")).pit();
        Source.Opening opening =
                () -> Source.recording(RecordingFiles.of(flight), pit, ReadOptions.strict(), 0, PitFeed.TO_THE_END);
        ReplayResult result = new Session(console, pit, "flight.dlr", opening, 1, false, List.of(), null).run();
        OutputFiles.write(report, HtmlReport.of(result));
        console.out().print(Colours.painted(TextReport.of(result), console.colour()));
        console.out().println();
        console.out().println("The report, to open in a browser: " + report.toAbsolutePath());
        console.out()
                .println("The pit it describes, to copy from: "
                        + demo.resolve("pit.yaml").toAbsolutePath().normalize());
        return ExitCode.PASS;
    }
}
