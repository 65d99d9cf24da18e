package dropline.harness.cli;

import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.harness.json.MeterJson;
import dropline.harness.meter.MeterException;
import dropline.harness.meter.MeterResult;
import dropline.harness.meter.MeterText;
import dropline.harness.problem.Nearest;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code dropline meter}: what a multimeter should read, and what a wrong reading means. */
@Command(
        name = "meter",
        header = "Say what a multimeter should read on a segment's wires, and what a wrong reading means.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        parameterListHeading = "%n",
        optionListHeading = "%n",
        sortOptions = false,
        customSynopsis = "dropline meter PIT [--segment S] [--read READING=VALUE]... [--json FILE|-]",
        descriptionHeading = "%n",
        description = {
            "Solves the pair of each segment, as the pit file describes it, as a network of resistors: sound,",
            "and with each fault in turn: a terminator missing, one too many, one on every module, none; bias",
            "missing or doubled; D1 and D0 exchanged; a bad joint, a broken wire, two wires that touch.",
            "",
            "With --read it names the faults that fit what you read, likeliest first: what comes close to the",
            "middle of what it may read before what does not, then the commoner. Where several fit it says",
            "which further readings would tell them apart.",
            "",
            "Readings: ohms (everything off, bias unplugged), ohms-biased (everything off), idle (D1 above D0,",
            "powered, nobody speaking), d1 and d0 (against common, powered). The meter is at the controller",
            "unless a board is named: idle@BOARD=170mV."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline meter pit.yaml",
            "  dropline meter pit.yaml --segment front --read ohms=40 --read idle=170mV",
            "",
            "Exit codes:  0 shown, and what was read is as it should be   1 it is not   2 the input is wrong"
        })
final class MeterCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(index = "0", paramLabel = "PIT", description = "The pit file (YAML).")
    @SuppressWarnings("NullAway.Init")
    private Path file;

    @Option(names = "--segment", paramLabel = "S", description = "Only this segment. Default: all that have a pair.")
    private @Nullable String segment;

    @Option(
            names = "--read",
            paramLabel = "READING=VALUE",
            description = "What the meter showed; as often as you like.")
    private List<String> reads = new ArrayList<>();

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private JsonOutput json;

    @Mixin
    final Debug debug = new Debug();

    MeterCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws IOException {
        Pit pit = PitFiles.read(file).pit();
        MeterResult result = result(pit);
        json.write(console, out -> MeterJson.write(result, out), MeterText.of(result));
        MeterResult.Diagnosis diagnosis = result.diagnosis();
        return diagnosis == null || diagnosis.isSound() ? ExitCode.PASS : ExitCode.FAIL;
    }

    private MeterResult result(Pit pit) {
        try {
            return MeterResult.of(pit, segments(pit), reads);
        } catch (MeterException wrong) {
            throw new WrongInput("dropline: " + wrong.getMessage(), wrong);
        }
    }

    private List<Integer> segments(Pit pit) {
        List<String> names = pit.segments().stream().map(Segment::name).toList();
        if (segment == null) {
            return IntStream.range(0, names.size()).boxed().toList();
        }
        if (!names.contains(segment)) {
            throw new WrongInput("dropline: there is no segment '" + segment + "' in " + file
                    + Nearest.to(segment, names)
                            .map(near -> "; did you mean " + near + "?")
                            .orElse("; there are " + String.join(", ", names)));
        }
        return List.of(names.indexOf(segment));
    }
}
