package dropline.harness.cli;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.trace.TraceSink;
import dropline.harness.finding.Findings;
import dropline.harness.finding.SegmentEvidence;
import dropline.harness.finding.Tiers;
import dropline.harness.json.ReplayJson;
import dropline.harness.link.KeepingLink;
import dropline.harness.link.KeptLink;
import dropline.harness.link.Link;
import dropline.harness.live.Acknowledgements;
import dropline.harness.live.Driving;
import dropline.harness.live.RollCall;
import dropline.harness.measure.SegmentMeasures;
import dropline.harness.measure.Times;
import dropline.harness.pitfile.PitFile;
import dropline.harness.recording.PitFeed;
import dropline.harness.recording.RecordingFiles;
import dropline.harness.replay.Both;
import dropline.harness.replay.Progress;
import dropline.harness.replay.Source;
import dropline.harness.replay.TraceFile;
import dropline.harness.report.HtmlReport;
import dropline.harness.report.TextReport;
import dropline.harness.verdict.Recording;
import dropline.harness.verdict.ReplayResult;
import dropline.harness.verdict.Run;
import dropline.harness.verdict.Verdicts;
import dropline.harness.verdict.Words;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code dropline drive}: the controller on a real pair, or on one that is played. */
@Command(
        name = "drive",
        header = "Play a recorded flight, in real time, to real boards, and judge every panel.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        parameterListHeading = "%n",
        optionListHeading = "%n",
        sortOptions = false,
        customSynopsis = {
            "dropline drive PIT RECORDING [--segment S] --port PORT|--tcp HOST:PORT [--from T] [--to T]",
            "               [--dtr on|off] [--boot-wait T] [--json FILE|-] [--html FILE]",
            "               [--trace FILE] [--timings FILE]",
            "dropline drive PIT RECORDING [--segment S] --again FILE [--from T] [--to T] ..."
        },
        descriptionHeading = "%n",
        description = {
            "Is the controller of one segment: polls its boards and sends them the flight's state as the pit",
            "file says, over a serial port or a network. What the boards answer is observed; what their panels",
            "show is inferred, by running each board's profile along, and the report says so. Ends with the",
            "flight, or with Ctrl-C. What --timings kept is driven again by --again, with nothing connected: the",
            "same instants and answers give the same trace, event by event."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline drive pit.yaml flight.dlr --segment front --port COM7",
            "  dropline drive pit.yaml flight.dlr --segment front --port COM7 --to 5m --html report.html",
            "",
            "Exit codes:  0 all pass   1 something fails or is undecided   2 the input is wrong   3 our own fault"
        })
final class DriveCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private Played played;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private SegmentChoice segment;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private PortOptions port;

    @Option(
            names = "--from",
            paramLabel = "T",
            converter = Durations.class,
            description = "Begin at this time in the recording, as in 90s or 2m30s.")
    private long fromNanos;

    @Option(
            names = "--to",
            paramLabel = "T",
            converter = Durations.class,
            description = "End at this time in the recording.")
    private long toNanos = PitFeed.TO_THE_END;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private JsonOutput json;

    @Option(names = "--html", paramLabel = "FILE", description = "Write the report: one file, readable offline.")
    private @Nullable Path html;

    @Option(names = "--trace", paramLabel = "FILE", description = "Write every event of the run, one a line.")
    private @Nullable Path trace;

    @Option(
            names = "--timings",
            paramLabel = "FILE",
            description = "Keep when this computer did what, and what came when, for --again.")
    private @Nullable Path timings;

    @Option(
            names = "--again",
            paramLabel = "FILE",
            description = "In place of a port: what --timings kept, with the same pit file, recording and stretch.")
    private @Nullable Path again;

    @Mixin
    final Debug debug = new Debug();

    DriveCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws IOException {
        RecordingFiles files = played.mustHaveRecording("");
        if (toNanos <= fromNanos) {
            throw played.usage("--to must lie after --from");
        }
        if ((again != null) == port.isGiven()) {
            throw played.usage(again == null ? "--port is missing (or --tcp, or --again)" : "--again needs no port");
        }
        PitFile.Understood understood = played.read(html, trace, json.file(), timings);
        Pit pit = understood.pit().alone(segment.spokenIn(understood.pit()));
        try (Source source =
                played.stretch(understood, files, fromNanos, toNanos).open()) {
            return again == null ? now(pit, source) : again(pit, source, again);
        }
    }

    private int now(Pit pit, Source source) throws IOException {
        Segment only = pit.segments().get(0);
        port.caution(console);
        try (Link link = port.open(only.baud(), only.format())) {
            awaitBoards(pit, link);
            if (timings == null) {
                return drive(pit, source, link);
            }
            try (Link keeping = KeepingLink.of(link, timings)) {
                return drive(pit, source, keeping);
            }
        }
    }

    private int again(Pit pit, Source source, Path file) throws IOException {
        InputFiles.mustExist(file, "file of timings");
        try (KeptLink link = KeptLink.open(file)) {
            return drive(pit, source, link);
        } catch (UncheckedIOException wrong) {
            throw new WrongInput("dropline: " + wrong.getMessage(), wrong);
        } catch (IOException wrong) {
            throw new WrongInput("dropline: " + wrong.getMessage(), wrong);
        }
    }

    private void awaitBoards(Pit pit, Link link) throws IOException {
        RollCall roll =
                new RollCall(pit, 0, link, pit.segments().get(0).controller().timeOutNanos());
        long waited = roll.firstAnswer(port.bootWaitNanos(), link);
        if (waited < 0) {
            console.err()
                    .println("dropline: no board has answered for " + Words.time(port.bootWaitNanos())
                            + "; going on all the same");
        } else if (waited > 500_000_000L) {
            console.err()
                    .println("dropline: the boards restarted when the port opened (normal); waited "
                            + Words.time(waited));
        }
    }

    private int drive(Pit pit, Source source, Link link) throws IOException {
        Layout layout = Layout.of(pit);
        SegmentMeasures measures = new SegmentMeasures(pit, layout, 0);
        SegmentEvidence evidence = new SegmentEvidence(pit, layout, 0, Tiers.HOST);
        TraceFile events = trace == null ? null : TraceFile.create(trace, pit, played.seed(), TraceFile.OBSERVED);
        TraceSink sink = new Both(measures, evidence.sink());
        Driving driving =
                new Driving(pit, 0, played.seed(), events == null ? sink : new Both(sink, events.segment(0)), link);
        AtomicBoolean stop = new AtomicBoolean();
        EndOfProcess end = EndOfProcess.watch(() -> stop.set(true), console);
        Progress progress = ProgressBar.on(console);
        try {
            BooleanSupplier isOver = link instanceof KeptLink kept ? kept::isOver : stop::get;
            long duration = driving.drive(source, isOver, written(events, progress));
            ProgressBar.end(progress);
            List<String> caveats = new ArrayList<>(source.losses());
            caveats.addAll(caveats(pit, driving, link));
            Run run = new Run(
                    Version.number(),
                    new Recording(played.name(), duration),
                    played.seed(),
                    driving.digest(),
                    List.of(),
                    Findings.of(pit, layout, List.of(evidence)),
                    caveats,
                    true);
            ReplayResult result = new Verdicts(pit, layout).of(run, List.of(measures), List.of());
            if (html != null) {
                OutputFiles.write(html, HtmlReport.of(result));
            }
            json.write(console, out -> ReplayJson.write(result, out), TextReport.of(result));
            return end.completed(Session.exitCode(result));
        } finally {
            ProgressBar.end(progress);
            if (events != null) {
                events.merge();
                events.close();
            }
            end.release();
        }
    }

    /** Writes what has happened so far whenever it is told how far the run has come. */
    private static Progress written(@Nullable TraceFile events, Progress progress) {
        if (events == null) {
            return progress;
        }
        return (reached, share) -> {
            try {
                events.merge();
            } catch (IOException full) {
                throw new UncheckedIOException(full);
            }
            progress.reached(reached, share);
        };
    }

    private static List<String> caveats(Pit pit, Driving driving, Link link) {
        List<String> caveats = new ArrayList<>();
        caveats.add("Driven in real time over " + link.where()
                + ": what boards answered was observed, what their panels show is inferred from their profiles.");
        caveats.add("This computer was late by " + Words.time(driving.latestNanos()) + " at most.");
        Acknowledgements acknowledged = driving.acknowledgements();
        if (acknowledged != null) {
            caveats.addAll(acknowledged(pit, acknowledged));
        }
        if (driving.outages() > 0) {
            caveats.add("The link broke off " + driving.outages() + " times.");
        }
        if (driving.strangers() > 0) {
            caveats.add(driving.strangers() + " replies came when nobody, or somebody else, was asked.");
        }
        return caveats;
    }

    /** What was observed of the boards' own programs, which is later than they had it. */
    private static List<String> acknowledged(Pit pit, Acknowledgements acknowledged) {
        Times all = new Times();
        Times slowest = new Times();
        String name = "";
        for (int n = 0; n < acknowledged.times().size(); n++) {
            Times own = acknowledged.times().get(n);
            all.addAll(own);
            if (own.count() > 0 && own.maxNanos() > slowest.maxNanos()) {
                slowest = own;
                name = pit.segments().get(0).nodes().get(n).name();
            }
        }
        if (all.count() == 0) {
            return List.of();
        }
        return List.of("Observed, as an upper bound: of " + all.count() + " changes the boards acknowledged 99 of 100"
                + " within " + Words.time(all.percentileNanos(99)) + ", the last after " + Words.time(all.maxNanos())
                + " ("
                + name + "); their programs had them by then.");
    }
}
