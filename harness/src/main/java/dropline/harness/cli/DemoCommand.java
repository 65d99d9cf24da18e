package dropline.harness.cli;

import java.nio.file.Path;
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
    private final Debug debug = new Debug();

    DemoCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        Path demo = Path.of(System.getProperty("dropline.home", "."), "scenarios", "demo");
        InputFiles.mustExist(demo.resolve("pit.yaml"), "demo pit");
        InputFiles.mustExist(demo.resolve("flight.dlr"), "demo flight");
        throw new WrongInput("dropline: this build cannot run the demo yet");
    }
}
