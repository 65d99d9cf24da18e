package dropline.harness.cli;

import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.run.Tallies;
import dropline.harness.link.Link;
import dropline.harness.live.RollCall;
import dropline.harness.live.RollCall.Found;
import dropline.harness.live.RollCall.Presence;
import dropline.harness.pitfile.PitFile;
import dropline.harness.verdict.Words;
import dropline.protocol.NodeStatus;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code dropline roll-call}: who answers on a real segment, held against the pit file. */
@Command(
        name = "roll-call",
        header = "Ask every address of a real segment who is there, and compare that with the pit file.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        parameterListHeading = "%n",
        optionListHeading = "%n",
        sortOptions = false,
        customSynopsis = {
            "dropline roll-call PIT [--segment S] --port PORT|--tcp HOST:PORT [--time-out T] [--strangers N]"
        },
        descriptionHeading = "%n",
        description = {
            "Polls every board that the pit file has on the segment five times, then every other address once,",
            "and says who is there, who is missing, who was not expected, where something garbled comes back, and",
            "who runs another firmware than the one that was measured. Sends plain polls, and asks for the",
            "firmware where the protocol can: no panel shows anything else for it."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline roll-call pit.yaml --segment front --port COM7",
            "",
            "Exit codes:  0 all there, as measured   1 not so   2 the input is wrong   3 our own fault"
        })
final class RollCallCommand implements Callable<Integer> {
    private static final int HIGHEST = 247;

    private final Console console;

    @Parameters(paramLabel = "PIT", description = "The pit file (YAML).")
    @SuppressWarnings("NullAway.Init")
    private Path file;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private SegmentChoice segment;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private PortOptions port;

    @Option(
            names = "--time-out",
            paramLabel = "T",
            converter = Durations.class,
            description = "How long to wait for an answer. Default: 50ms.")
    private long timeOutNanos = 50_000_000L;

    @Option(
            names = "--strangers",
            paramLabel = "N",
            description = "Ask addresses up to this one that the pit file does not name; 0 for none. Default: 247.")
    private int strangers = HIGHEST;

    @Mixin
    final Debug debug = new Debug();

    RollCallCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws IOException {
        PitFile.Understood understood = PitFiles.read(file);
        Pit pit = understood.pit();
        int index = segment.spokenIn(pit);
        Segment chosen = pit.segments().get(index);
        if (strangers < 0 || strangers > HIGHEST) {
            throw new WrongInput("dropline: --strangers must be 0.." + HIGHEST + ", not " + strangers);
        }
        port.caution(console);
        try (Link link = port.open(chosen.baud(), chosen.format())) {
            RollCall roll = new RollCall(pit, index, link, timeOutNanos);
            long unused = roll.firstAnswer(port.bootWaitNanos(), link);
            List<Found> found = roll.call(strangers, this::progress);
            if (console.terminal()) {
                console.err().print("\r                                        \r");
            }
            console.out().print(text(chosen, found));
            console.out().flush();
            boolean well = found.stream().allMatch(one -> one.presence() == Presence.THERE && !one.isChanged());
            return well ? ExitCode.PASS : ExitCode.FAIL;
        }
    }

    private void progress(int address) {
        if (console.terminal()) {
            console.err().print("\rasking address " + address + "   ");
            console.err().flush();
        }
    }

    static String text(Segment segment, List<Found> found) {
        StringBuilder text = new StringBuilder();
        long there =
                found.stream().filter(one -> one.presence() == Presence.THERE).count();
        text.append(there)
                .append(" of ")
                .append(segment.nodes().size())
                .append(" boards of segment ")
                .append(segment.name())
                .append(" answer.\n");
        for (Found one : found) {
            text.append(String.format(Locale.ROOT, "  %3d  %-24s ", one.address(), one.node()))
                    .append(words(one))
                    .append('\n');
        }
        return text.toString();
    }

    private static String words(Found one) {
        return switch (one.presence()) {
            case THERE, UNEXPECTED -> (one.presence() == Presence.UNEXPECTED ? "NOT EXPECTED; " : "") + how(one);
            case MISSING -> "MISSING: no answer to " + one.tries() + " polls";
            case GARBLED ->
                "GARBLED: something comes back, but no sound reply; two boards with this address, a"
                        + " wrong rate, or a bad pair";
        };
    }

    private static String how(Found one) {
        String text = "answers " + one.answered() + " of " + one.tries() + ", least reply gap "
                + Words.time(Math.max(0, one.gapNanos()));
        NodeStatus status = one.status();
        if (status != null) {
            text += ", " + status.bootCount() + " restarts, " + status.receiveErrors()
                    + " receive errors, longest loop "
                    + Words.time(status.longestLoopUnits() * Tallies.LOOP_UNIT_NANOS);
        }
        if (one.firmware() != null) {
            text += ", firmware " + one.firmware();
        }
        return one.isChanged()
                ? "CHANGED: its passport is from firmware " + one.measured() + ", the board says " + one.firmware()
                        + ": measure again; " + text
                : text;
    }
}
