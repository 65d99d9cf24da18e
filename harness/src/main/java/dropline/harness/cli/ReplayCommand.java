package dropline.harness.cli;

import dropline.bus.fault.Fault;
import dropline.bus.pit.Pit;
import dropline.harness.fault.FaultOptions;
import dropline.harness.json.ReplayJson;
import dropline.harness.origin.Trials;
import dropline.harness.pitfile.PitFile;
import dropline.harness.problem.Problem;
import dropline.harness.recording.PitFeed;
import dropline.harness.recording.RecordingFiles;
import dropline.harness.replay.Progress;
import dropline.harness.replay.RunLimit;
import dropline.harness.replay.Source;
import dropline.harness.report.HtmlReport;
import dropline.harness.report.TextReport;
import dropline.harness.verdict.ReplayResult;
import dropline.harness.verdict.RestsOn;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code dropline replay}: plays a recording, or the load a pit describes, through the simulated pit. */
@Command(
        name = "replay",
        header = "Play a recorded flight through the simulated pit and judge every panel.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        parameterListHeading = "%n",
        optionListHeading = "%n",
        sortOptions = false,
        customSynopsis = {
            "dropline replay PIT RECORDING [--controls FILE] [--seed N] [--from T] [--to T]",
            "                [--single-failures] [--lenient] [--fault FAULT]... [--json FILE|-] [--html FILE]",
            "                [--trace FILE]",
            "dropline replay PIT --for T [--seed N] ..."
        },
        descriptionHeading = "%n",
        description = {
            "Plays a recorded flight through the simulated pit and measures, for every panel, the time from",
            "a change of state to the panel showing it. The answer goes to standard output: the verdict in",
            "plain sentences, what to do about it, then one line per panel."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline replay pit.yaml flight.csv",
            "  dropline replay pit.yaml flight.dlr --html report.html --json result.json",
            "  dropline replay pit.yaml flight.csv.gz --from 5m --to 12m30s",
            "  dropline replay pit.yaml flight.csv --controls moves.csv",
            "  dropline replay pit.yaml flight.dlr --single-failures",
            "  dropline replay bus.yaml --for 600s          the load described in the pit file",
            "  dropline replay pit.yaml flight.dlr --fault \"dead-node oil-board at 60s for 30s\"",
            "  dropline replay pit.yaml flight.dlr --fault \"driver-released-early flap-board by 38us rate 20%%\"",
            "  dropline replay pit.yaml flight.dlr --fault \"needle-slipped 'Oil pressure/left' by 12 psi\"",
            "",
            "Exit codes:  0 all pass   1 something fails or is undecided   2 the input is wrong   3 our own fault"
        })
final class ReplayCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private Played played;

    @Option(
            names = "--from",
            paramLabel = "T",
            converter = Durations.class,
            description = "Begin at this time in the recording, as in 90s or 2m30s.")
    private @Nullable Long fromNanos;

    @Option(
            names = "--to",
            paramLabel = "T",
            converter = Durations.class,
            description = "End at this time in the recording.")
    private @Nullable Long toNanos;

    @Option(
            names = "--for",
            paramLabel = "T",
            converter = Durations.class,
            description = "In place of a recording: run the load the pit file describes for this long.")
    private @Nullable Long forNanos;

    @Option(
            names = "--single-failures",
            description = "Run again with each node dead in turn, and show the worst of it.")
    private boolean singleFailures;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private Injected injected;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private JsonOutput json;

    @Option(names = "--html", paramLabel = "FILE", description = "Write the report: one file, readable offline.")
    private @Nullable Path html;

    @Option(names = "--trace", paramLabel = "FILE", description = "Write every event of the run, one a line.")
    private @Nullable Path trace;

    @Mixin
    final Debug debug = new Debug();

    ReplayCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws IOException {
        Play play = forNanos == null ? recording() : load(forNanos);
        Pit pit = play.pit().pit();
        List<Fault> faults = faults(pit, play.opening());
        ReplayResult result = new Session(
                        console, pit, played.name(), play.opening(), played.seed(), singleFailures, faults, trace)
                .run();
        List<Problem> never =
                FaultOptions.neverStruck(faults, pit, result.recording().durationNanos());
        if (!never.isEmpty()) {
            throw Session.neverStruck(never);
        }
        result = result.restingOn(restsOn(play, result, faults));
        if (html != null) {
            OutputFiles.write(html, HtmlReport.of(result));
        }
        ReplayResult written = result;
        json.write(console, out -> ReplayJson.write(written, out), TextReport.of(result));
        return Session.exitCode(result);
    }

    /**
     * What is played.
     *
     * @param stretch opens a part of it
     */
    private record Play(PitFile.Understood pit, Source.Opening opening, Trials.Stretch stretch) {}

    private Play load(long durationNanos) throws IOException {
        mustBeALoad(durationNanos);
        PitFile.Understood pit = played.read(html, trace, json.file());
        // every stretch of a described load is like every other
        return new Play(pit, played.load(pit, durationNanos), (begin, end) -> played.load(pit, end - begin));
    }

    private Play recording() throws IOException {
        RecordingFiles file = played.mustHaveRecording("; or, for a pit that describes a load, --for 600s");
        long from = fromNanos == null ? 0 : fromNanos;
        long to = toNanos == null ? PitFeed.TO_THE_END : toNanos;
        if (to <= from) {
            throw played.usage("--to must lie after --from");
        }
        PitFile.Understood pit = played.read(html, trace, json.file());
        return new Play(
                pit,
                played.stretch(pit, file, from, to),
                (begin, end) -> played.stretch(pit, file, from + begin, from + end));
    }

    /** Guesses are tried on the healthy pit: what a fault does to it is no figure of it. */
    private RestsOn restsOn(Play play, ReplayResult result, List<Fault> faults) throws IOException {
        PitFile.Understood pit = play.pit();
        if (!faults.isEmpty()) {
            return Trials.counted(pit.figures());
        }
        Progress progress = ProgressBar.on(console);
        try {
            return new Trials(pit.pit(), pit.figures(), play.stretch(), played.seed(), Session.threads())
                    .after(result, progress);
        } finally {
            ProgressBar.end(progress);
        }
    }

    private List<Fault> faults(Pit pit, Source.Opening opening) throws IOException {
        if (injected.isEmpty()) {
            return List.of();
        }
        try (Source source = opening.open()) {
            return injected.read(pit, source.mostNanos());
        }
    }

    private void mustBeALoad(long durationNanos) {
        played.mustHaveNoRecording();
        if (fromNanos != null || toNanos != null) {
            throw played.usage("--from and --to choose a stretch of a recording; with --for there is none");
        }
        if (durationNanos <= 0) {
            throw played.usage("--for must be longer than nothing");
        }
        if (durationNanos > RunLimit.USUAL.longestNanos()) {
            throw played.usage("--for must be at most " + RunLimit.USUAL.longestNanos() / 1_000_000_000L
                    + " s, the time limit of a run");
        }
    }
}
