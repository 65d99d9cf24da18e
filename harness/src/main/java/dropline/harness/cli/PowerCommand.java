package dropline.harness.cli;

import dropline.harness.json.PowerJson;
import dropline.harness.pitfile.PitFile;
import dropline.harness.power.FlightStudy;
import dropline.harness.power.PowerPage;
import dropline.harness.power.PowerResult;
import dropline.harness.power.PowerStudy;
import dropline.harness.power.PowerText;
import dropline.harness.power.PowerUpStudy;
import dropline.harness.recording.PitFeed;
import dropline.harness.recording.RecordingFiles;
import dropline.harness.replay.Progress;
import dropline.harness.replay.Source;
import dropline.harness.replay.StoppedRunException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code dropline power}: what supplies and wires have to give, and what arrives at the boards. */
@Command(
        name = "power",
        header = "Say what the supplies have to give and what arrives at the boards.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        parameterListHeading = "%n",
        optionListHeading = "%n",
        sortOptions = false,
        customSynopsis = "dropline power PIT [RECORDING] [--json FILE|-] [--html FILE] [--controls FILE] [--seed N]"
                + " [--lenient]",
        descriptionHeading = "%n",
        description = {
            "Solves the pit's supplies, wires and boards as a network: amperes for each supply and run when",
            "idle, in flight, at night, in a lamp test and at a cold start; volts and ground lift at every",
            "board; heat in linear regulators; what of the rating is left; boards fed from USB and a supply at",
            "once; the power-up as a time line. With a recording, also the currents over that flight.",
            "",
            "Fuses, and what a wire may carry, are not computed: your local code and the wire's maker say that.",
            "All figures are planning aids."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline power pit.yaml",
            "  dropline power pit.yaml flight.csv --html power.html",
            "",
            "Exit codes:  0 all pass   1 something fails or is undecided   2 the input is wrong   3 our own fault"
        })
final class PowerCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private Played played;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private JsonOutput json;

    @Option(names = "--html", paramLabel = "FILE", description = "Write a page with the supply tree drawn.")
    private @Nullable Path html;

    @Mixin
    final Debug debug = new Debug();

    PowerCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws IOException {
        PitFile.Understood understood = played.read(html, json.file());
        if (understood.pit().supplies().isEmpty()) {
            throw new WrongInput("dropline: " + played.pit() + " describes no supplies, so there is nothing to compute;"
                    + " write supplies: with volts, rating and runs into the pit file, and supply: on its nodes"
                    + " (docs/power.md)");
        }
        PowerResult result = studied(understood);
        if (html != null) {
            OutputFiles.write(html, PowerPage.html(result));
        }
        json.write(console, out -> PowerJson.write(result, out), PowerText.of(result));
        return result.passes() ? ExitCode.PASS : ExitCode.FAIL;
    }

    private PowerResult studied(PitFile.Understood understood) throws IOException {
        PowerResult result =
                PowerUpStudy.with(PowerStudy.of(understood.pit()), understood.pit(), played.seed(), Session.threads());
        RecordingFiles files = played.recording();
        if (files == null) {
            return result;
        }
        Source.Opening opening = played.stretch(understood, files, 0, PitFeed.TO_THE_END);
        Progress progress = ProgressBar.on(console);
        try {
            PowerResult flown = FlightStudy.over(
                    result, understood.pit(), played.name(), opening, played.seed(), Session.threads(), progress);
            flown.losses().forEach(loss -> console.err().println("dropline: " + loss));
            return flown;
        } catch (StoppedRunException stopped) {
            throw new WrongInput("dropline: " + stopped.getMessage(), stopped);
        } finally {
            ProgressBar.end(progress);
        }
    }
}
