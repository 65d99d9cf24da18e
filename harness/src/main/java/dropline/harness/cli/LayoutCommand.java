package dropline.harness.cli;

import dropline.harness.layout.Deciphered;
import dropline.harness.layout.LayoutFile;
import dropline.harness.layout.LayoutText;
import dropline.harness.layout.SeenBytes;
import dropline.harness.layout.Trial;
import dropline.harness.problem.Problem;
import dropline.harness.problem.Problems;
import dropline.protocol.Bytes;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code dropline layout}: tries a protocol's description without a pit. */
@Command(
        name = "layout",
        header = "Show every frame of a protocol you have described, byte by byte, or read bytes by it.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        parameterListHeading = "%n",
        optionListHeading = "%n",
        descriptionHeading = "%n",
        description = {
            "Reads the description of a protocol of your own (docs/custom-protocols.md) and shows each of its",
            "frames as bytes, with what every byte is, so that you can hold it beside your sketch. With --decode",
            "or --decode-text it reads bytes you have seen on the wire and says what they are."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline layout mine.yaml --address 7 --values 345,-20",
            "  dropline layout mine.yaml --decode \"C3 3C 10 07 00 72 35\"",
            "  dropline layout mine.yaml --decode-text \"?07*38\\r\\n\"",
            "",
            "Exit codes:  0 fine   1 some bytes are no frame   2 the input is wrong   3 our own fault"
        })
final class LayoutCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(index = "0", paramLabel = "LAYOUT", description = "The protocol's description (YAML).")
    @SuppressWarnings("NullAway.Init")
    private Path layout;

    @Option(
            names = "--address",
            paramLabel = "N",
            defaultValue = "7",
            description = "The node in the frames shown; ${DEFAULT-VALUE} where left out.")
    private int address;

    @Option(
            names = "--counter",
            paramLabel = "N",
            defaultValue = "1",
            description = "The state frame's number; ${DEFAULT-VALUE} where left out.")
    private int counter;

    @Option(
            names = "--values",
            paramLabel = "LIST",
            split = ",",
            defaultValue = "1,200",
            description = "Values of signals or controls 1, 2 and so on; ${DEFAULT-VALUE} where left out.")
    @SuppressWarnings("NullAway.Init")
    private List<Long> values;

    @Option(
            names = "--decode",
            paramLabel = "HEX",
            description = "Bytes in pairs of hexadecimal digits to read instead; | stands for a silence.")
    private @Nullable String hex;

    @Option(
            names = "--decode-text",
            paramLabel = "TEXT",
            description = "Text to read instead; \\n, \\r, \\t and \\xHH stand for what cannot be typed.")
    private @Nullable String text;

    @Mixin
    final Debug debug = new Debug();

    LayoutCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        InputFiles.mustExist(layout, "layout file");
        LayoutFile.Result result = LayoutFile.read(layout);
        if (result instanceof LayoutFile.Wrong wrong) {
            throw PitFiles.wrong(wrong.problems());
        }
        if (result instanceof LayoutFile.Understood understood) {
            return hex == null && text == null ? show(understood) : decode(understood, pieces());
        }
        throw new AssertionError(result);
    }

    private int show(LayoutFile.Understood understood) {
        Trial trial = new Trial(address, counter, values);
        List<String> misfits = trial.misfits(understood.protocol());
        if (!misfits.isEmpty()) {
            throw new WrongInput("dropline: " + String.join("\ndropline: ", misfits)
                    + "\ndropline: choose others with --address and --values");
        }
        console.out().print(LayoutText.of(understood.protocol(), trial));
        List<Problem> cautions = understood.cautions();
        if (!cautions.isEmpty()) {
            console.out().println("\nWorth knowing, though not wrong:\n");
            console.out().print(Problems.text(cautions));
        }
        return ExitCode.PASS;
    }

    private int decode(LayoutFile.Understood understood, List<Bytes> pieces) {
        Deciphered deciphered = Deciphered.of(understood.protocol(), pieces);
        console.out().print(deciphered.text());
        return deciphered.allSound() ? ExitCode.PASS : ExitCode.FAIL;
    }

    private List<Bytes> pieces() {
        List<Bytes> pieces = new ArrayList<>();
        if (hex != null) {
            Optional<List<Bytes>> read = SeenBytes.hex(hex);
            pieces.addAll(read.orElseThrow(() -> new WrongInput("dropline: --decode needs pairs of hexadecimal digits"
                    + " such as \"A5 5A 01\", with | for a silence; found: " + hex)));
        }
        if (text != null) {
            pieces.add(SeenBytes.text(text)
                    .orElseThrow(
                            () -> new WrongInput("dropline: --decode-text needs text of plain characters, with \\n,"
                                    + " \\r, \\t, \\\\ or \\xHH for others; found: " + text)));
        }
        return pieces;
    }
}
