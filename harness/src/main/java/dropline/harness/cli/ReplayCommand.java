package dropline.harness.cli;

import dropline.bus.fault.Fault;
import dropline.bus.pit.Pit;
import dropline.harness.fault.FaultOptions;
import dropline.harness.json.ReplayJson;
import dropline.harness.pitfile.PitFile;
import dropline.harness.recording.PitFeed;
import dropline.harness.recording.ReadOptions;
import dropline.harness.replay.RunLimit;
import dropline.harness.replay.Source;
import dropline.harness.report.HtmlReport;
import dropline.harness.report.TextReport;
import dropline.harness.verdict.ReplayResult;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

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
            "dropline replay PIT RECORDING [--seed N] [--from T] [--to T] [--single-failures] [--lenient]",
            "                [--fault FAULT]... [--json FILE|-] [--html FILE] [--trace FILE]",
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

    @Parameters(index = "0", paramLabel = "PIT", description = "The pit file (YAML).")
    @SuppressWarnings("NullAway.Init")
    private Path pit;

    @Parameters(
            index = "1",
            arity = "0..1",
            paramLabel = "RECORDING",
            description = "The recording: CSV or Dropline's own form, plain or gzip.")
    private @Nullable Path recording;

    @Option(
            names = "--seed",
            paramLabel = "N",
            description = "The run's seed; the same seed gives the same run. Default: 1.")
    private long seed = 1;

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

    @Option(
            names = "--fault",
            paramLabel = "FAULT",
            description = {
                "Let this go wrong: \"KIND TARGET [as NODE] [at T] [for T] [rate R] [by AMOUNT]\". May be given",
                "several times. Times count from where the run begins; what is left out is the usual.",
                "'dropline faults' shows every kind with an example."
            })
    private List<String> faults = new ArrayList<>();

    @Option(names = "--lenient", description = "Skip bad rows of the recording and count them, instead of stopping.")
    private boolean lenient;

    @Option(
            names = "--json",
            paramLabel = "FILE|-",
            description = "Write everything as one JSON document; '-' writes it, and nothing else, to standard output.")
    private @Nullable String json;

    @Option(names = "--html", paramLabel = "FILE", description = "Write the report: one file, readable offline.")
    private @Nullable Path html;

    @Option(names = "--trace", paramLabel = "FILE", description = "Write every event of the run, one a line.")
    private @Nullable Path trace;

    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Mixin
    final Debug debug = new Debug();

    ReplayCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws IOException {
        Source.Opening opening;
        String name;
        PitFile.Understood understood;
        if (forNanos != null) {
            understood = readPit();
            opening = load(understood.pit(), forNanos);
            name = "described load";
        } else {
            Path file = recordingFile();
            understood = readPit();
            opening = recording(understood, file);
            Path last = file.getFileName();
            name = last == null ? file.toString() : last.toString();
        }
        List<Fault> wrong = faults(understood.pit(), opening);
        ReplayResult result =
                new Session(console, understood.pit(), name, opening, seed, singleFailures, wrong, trace).run();
        write(result);
        return Session.exitCode(result);
    }

    private List<Fault> faults(Pit understood, Source.Opening opening) throws IOException {
        if (faults.isEmpty()) {
            return List.of();
        }
        FaultOptions.Read read;
        try (Source source = opening.open()) {
            read = FaultOptions.read(faults, understood, source.mostNanos());
        }
        if (!read.problems().isEmpty()) {
            throw PitFiles.wrong(read.problems());
        }
        return read.faults();
    }

    private PitFile.Understood readPit() throws IOException {
        PitFile.Understood understood = PitFiles.read(pit);
        Path[] inputs = recording == null ? new Path[] {pit} : new Path[] {pit, recording};
        OutputFiles.mustBeWritable(html, inputs);
        OutputFiles.mustBeWritable(trace, inputs);
        OutputFiles.mustBeWritable(jsonFile(), inputs);
        return understood;
    }

    private Source.Opening load(Pit understood, long durationNanos) {
        if (recording != null) {
            throw usage("--for plays the load the pit describes; leave out " + recording + " or --for");
        }
        if (fromNanos != null || toNanos != null) {
            throw usage("--from and --to choose a stretch of a recording; with --for there is none");
        }
        if (durationNanos <= 0) {
            throw usage("--for must be longer than nothing");
        }
        if (durationNanos > RunLimit.USUAL.longestNanos()) {
            throw usage("--for must be at most " + RunLimit.USUAL.longestNanos() / 1_000_000_000L
                    + " s, the time limit of a run");
        }
        Pit.Load load = understood.load();
        if (load == null) {
            throw new WrongInput(
                    "dropline: " + pit + " describes no load, so --for has nothing to play; give a recording,"
                            + " or write a load into the pit file (load: every, changes)");
        }
        return () -> Source.load(understood, load, durationNanos);
    }

    private Path recordingFile() {
        if (recording == null) {
            throw usage("a recording is missing; or, for a pit that describes a load, --for 600s");
        }
        InputFiles.mustExist(recording, "recording");
        return recording;
    }

    private Source.Opening recording(PitFile.Understood understood, Path file) {
        long from = fromNanos == null ? 0 : fromNanos;
        long to = toNanos == null ? PitFeed.TO_THE_END : toNanos;
        if (to <= from) {
            throw usage("--to must lie after --from");
        }
        ReadOptions options = new ReadOptions(lenient, understood.recordingTime());
        return () -> Source.recording(file, understood.pit(), options, from, to);
    }

    private void write(ReplayResult result) throws IOException {
        if (html != null) {
            OutputFiles.write(html, HtmlReport.of(result));
        }
        Path file = jsonFile();
        if (file != null) {
            OutputFiles.write(file, jsonText(result));
        }
        if ("-".equals(json)) {
            console.raw().write(jsonText(result).getBytes(StandardCharsets.UTF_8));
            console.raw().flush();
        } else {
            console.out().print(Colours.painted(TextReport.of(result), console.colour()));
            console.out().flush();
        }
    }

    private static String jsonText(ReplayResult result) throws IOException {
        StringWriter text = new StringWriter();
        ReplayJson.write(result, text);
        return text.toString();
    }

    private @Nullable Path jsonFile() {
        return json == null || json.equals("-") ? null : Path.of(json);
    }

    private ParameterException usage(String message) {
        return new ParameterException(spec.commandLine(), message);
    }
}
