package dropline.harness.cli;

import dropline.harness.json.AdapterJson;
import dropline.harness.link.Link;
import dropline.harness.link.LoopBack;
import dropline.harness.verdict.Words;
import dropline.protocol.CharacterFormat;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.Charset;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code dropline adapter}: what an adapter adds to every instant. */
@Command(
        name = "adapter",
        header = "Measure what a USB adapter and this computer add to every instant.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        optionListHeading = "%n",
        sortOptions = false,
        customSynopsis = {
            "dropline adapter --port PORT|--tcp HOST:PORT [--baud N] [--trips N] [--looped-back]",
            "                 [--json FILE|-]"
        },
        descriptionHeading = "%n",
        description = {
            "Sends a few bytes again and again and measures how long they take to come back, less their time on",
            "the wire. Needs the adapter's output led back to its input and nothing else connected: TX to RX of a",
            "plain adapter; of an RS-485 adapter that hears itself, A and B with nothing on them. Sends nothing",
            "until you have confirmed that. The answer is what --floor of 'dropline bench' wants."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline adapter --port COM7 --baud 250000",
            "",
            "Exit codes:  0 measured   1 what is sent does not come back   2 the input is wrong   3 our own fault"
        })
final class AdapterCommand implements Callable<Integer> {
    private static final int USUAL_TRIPS = 500;

    private final Console console;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private PortOptions port;

    @Option(names = "--baud", paramLabel = "N", description = "Bits a second. Default: 115200.")
    private int baud = 115_200;

    @Option(names = "--trips", paramLabel = "N", description = "How often to send. Default: 500.")
    private int trips = USUAL_TRIPS;

    @Option(names = "--looped-back", description = "It is looped back, and nothing else is connected: do not ask.")
    private boolean loopedBack;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private JsonOutput json;

    @Mixin
    final Debug debug = new Debug();

    AdapterCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws IOException {
        if (trips < 10 || trips > 1_000_000) {
            throw new WrongInput("dropline: --trips must be 10..1000000, not " + trips);
        }
        OutputFiles.mustBeWritable(json.file());
        if (!loopedBack && !isConfirmed()) {
            throw new WrongInput(
                    "dropline: nothing was sent;" + " loop the adapter back, then say yes or add --looped-back");
        }
        try (Link link = port.open(baud, CharacterFormat.EIGHT_N_ONE)) {
            LoopBack loop = new LoopBack(link, baud, CharacterFormat.EIGHT_N_ONE);
            if (!loop.isClosed()) {
                console.err()
                        .println("dropline: what is sent does not come back on " + link.where()
                                + "; join TX and RX (of an RS-485 adapter that hears itself, leave A and B open)");
                return ExitCode.FAIL;
            }
            loop.measure(trips);
            json.write(console, out -> AdapterJson.write(loop, link.where(), out), text(loop, link));
            return ExitCode.PASS;
        }
    }

    private boolean isConfirmed() throws IOException {
        if (!console.terminal()) {
            return false;
        }
        console.err()
                .print("Supplies off, nothing on the pair, output led back to input, nothing else connected?"
                        + " Type yes: ");
        console.err().flush();
        String said = new BufferedReader(new InputStreamReader(System.in, Charset.defaultCharset())).readLine();
        return said != null && said.strip().equalsIgnoreCase("yes");
    }

    static String text(LoopBack loop, Link link) {
        return "Over " + link.where() + ", " + loop.count() + " round trips"
                + (loop.lost() > 0 ? " (" + loop.lost() + " more came back wrong or not at all)" : "")
                + ": beyond the time on the wire\nthe adapter and this computer add " + Words.time(loop.leastNanos())
                + " at least, " + Words.time(loop.atMostNanos(50)) + " half the time at most, "
                + Words.time(loop.atMostNanos(99)) + "\nin 99 of 100, " + Words.time(loop.atMostNanos(100))
                + " at most.\n" + timer(loop.timer()) + "For 'dropline bench': --floor "
                + Math.max(1, loop.atMostNanos(99) / 1000) + "us\n";
    }

    private static String timer(LoopBack.Timer timer) {
        return switch (timer) {
            case LONG ->
                "That is a latency timer of some 16 ms. Set it to 1 ms: on Windows in the Device Manager, the"
                        + " port's\nproperties, advanced settings; on Linux write 1 to"
                        + " /sys/bus/usb-serial/devices/NAME/latency_timer\n"
                        + "(common practice; not every adapter has one).\n";
            case SHORT -> "That is a latency timer of a millisecond or two, or a computer that is busy.\n";
            case NONE -> "There is no latency timer worth the name.\n";
        };
    }
}
