package dropline.harness.cli;

import dropline.bus.fault.Fault;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.trace.TraceSink;
import dropline.harness.link.Link;
import dropline.harness.link.TcpLink;
import dropline.harness.live.StandIn;
import dropline.harness.problem.Nearest;
import dropline.harness.recording.Moves;
import dropline.harness.recording.PitFeed;
import dropline.harness.recording.RecordingFiles;
import dropline.harness.replay.Source;
import dropline.harness.verdict.Words;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicBoolean;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code dropline stand-in}: plays a segment's nodes for somebody else's controller. */
@Command(
        name = "stand-in",
        header = "Play a segment's boards, in real time, for a controller of your own.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        parameterListHeading = "%n",
        optionListHeading = "%n",
        sortOptions = false,
        customSynopsis = {
            "dropline stand-in PIT [RECORDING] [--segment S] --listen HOST:PORT|--port PORT [--only NODE]...",
            "                  [--fault FAULT]... [--for T]"
        },
        descriptionHeading = "%n",
        description = {
            "Answers as the boards of a segment would, modelled from their profiles and paced at the baud rate:",
            "all of them, or only those named, which then answer beside real ones. A recording moves their",
            "controls from the first byte heard on. Ends with Ctrl-C, or after --for.",
            "A server listens on this computer alone unless --open-to-the-network says otherwise."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline stand-in pit.yaml --segment front --listen 127.0.0.1:41510",
            "  dropline stand-in pit.yaml --segment front --port COM5 --only oil-board",
            "",
            "Exit codes:  0 played   1 the link was lost for good   2 the input is wrong   3 our own fault"
        })
final class StandInCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private Played played;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private SegmentChoice segment;

    @Option(
            names = "--listen",
            paramLabel = "HOST:PORT",
            converter = HostPort.class,
            description = "Wait at this address of this computer for a controller that connects.")
    private @Nullable InetSocketAddress listen;

    @Option(
            names = "--open-to-the-network",
            description = "Let --listen take an address that other computers reach: whoever reaches it may connect.")
    private boolean open;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private PortOptions port;

    @Option(
            names = "--only",
            paramLabel = "NODE",
            description = "Play only this board; may be given several times. Default: all of the segment.")
    private List<String> only = new ArrayList<>();

    @Option(
            names = "--for",
            paramLabel = "T",
            converter = Durations.class,
            description = "End after this time, as in 90s, 30m.")
    private @Nullable Long forNanos;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private Injected injected;

    @Mixin
    final Debug debug = new Debug();

    StandInCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws IOException {
        var understood = played.read();
        Pit pit = understood.pit();
        int index = segment.spokenIn(pit);
        Segment chosen = pit.segments().get(index);
        List<Fault> faults = new ArrayList<>(injected.read(pit, OptionalLong.empty()));
        faults.addAll(absent(pit, index));
        AtomicBoolean stop = new AtomicBoolean();
        RecordingFiles files = played.recording();
        try (Link link = link(chosen);
                Source source = files == null
                        ? null
                        : played.stretch(understood, files, 0, PitFeed.TO_THE_END)
                                .open()) {
            Moves moves = source == null ? Moves.none() : new Moves(source.feed());
            StandIn standIn = new StandIn(pit, index, played.seed(), faults, moves, new TraceSink() {}, link);
            return play(standIn, link, stop);
        }
    }

    private int play(StandIn standIn, Link link, AtomicBoolean stop) {
        EndOfProcess end = EndOfProcess.watch(() -> stop.set(true), console);
        try {
            console.err().println("Playing for " + link.where() + "; Ctrl-C ends it.");
            long until = forNanos == null ? Long.MAX_VALUE : link.now() + forNanos;
            int code = ExitCode.PASS;
            try {
                standIn.play(() -> stop.get() || link.now() >= until);
            } catch (IOException gone) {
                console.err().println("dropline: " + gone.getMessage());
                code = ExitCode.FAIL;
            }
            console.out()
                    .println("Heard " + standIn.receivedBytes() + " bytes and gave " + standIn.replies()
                            + " replies; the latest of them was " + Words.time(standIn.latestNanos())
                            + " late by this computer's doing.");
            console.out().flush();
            return end.completed(code);
        } finally {
            end.release();
        }
    }

    private Link link(Segment chosen) {
        InetSocketAddress here = listen;
        if (here == null) {
            port.caution(console);
            return port.open(chosen.baud(), chosen.format());
        }
        if (port.isGiven()) {
            throw played.usage("--listen waits for a controller, --port and --tcp lead to one; give one of them");
        }
        if (!here.getAddress().isLoopbackAddress() && !open) {
            throw new WrongInput("dropline: " + here.getHostString() + " can be reached from other computers, and"
                    + " whoever reaches it may connect; give 127.0.0.1, or add --open-to-the-network");
        }
        try {
            return TcpLink.at(here);
        } catch (IOException refused) {
            throw new WrongInput("dropline: " + refused.getMessage(), refused);
        }
    }

    /** Boards that are not played stay silent. */
    private List<Fault> absent(Pit pit, int index) {
        List<String> names =
                pit.segments().get(index).nodes().stream().map(Node::name).toList();
        for (String name : only) {
            if (!names.contains(name)) {
                String near = Nearest.to(name, names)
                        .map(other -> "; did you mean " + other + "?")
                        .orElse("");
                throw new WrongInput("dropline: the segment has no board '" + name + "'" + near);
            }
        }
        List<Fault> absent = new ArrayList<>();
        List<Layout.NodePlace> places = Layout.of(pit).nodes();
        for (int n = 0; n < places.size() && !only.isEmpty(); n++) {
            if (places.get(n).segment() == index
                    && !only.contains(places.get(n).node().name())) {
                absent.add(Fault.deadNode(index, n));
            }
        }
        return absent;
    }
}
