package dropline.harness.cli;

import dropline.bus.fault.Fault;
import dropline.bus.pit.Pit;
import dropline.harness.capture.Resolution;
import dropline.harness.capture.Stretch;
import dropline.harness.fault.FaultOptions;
import dropline.harness.pitfile.PitFile;
import dropline.harness.recording.ReadOptions;
import dropline.harness.replay.Source;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalLong;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code dropline trace}: a stretch of a run as files for waveform viewers and packet analysers, or as a drawing. */
@Command(
        name = "trace",
        header = "Write what stood on the wire, bit by bit, frame by frame, or as a drawing.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        parameterListHeading = "%n",
        optionListHeading = "%n",
        sortOptions = false,
        customSynopsis = {
            "dropline trace PIT RECORDING [--from T] --to T [--segment NAME] [--seed N] [--lenient]",
            "               [--fault FAULT]... [--vcd FILE] [--resolution STEP] [--pcapng FILE]",
            "               [--timeline FILE.svg]",
            "dropline trace PIT --for T [--from T] [--to T] ..."
        },
        descriptionHeading = "%n",
        description = {
            "Plays a recorded flight through the simulated pit, from its beginning, and writes what stood on",
            "the wire from one time to another: as a waveform for viewers and decoders (VCD), as packets for",
            "packet analysers (pcapng), as a drawing (SVG). Frames that begin in the stretch are whole."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline trace pit.yaml flight.dlr --from 60s --to 60.05s --timeline bus.svg",
            "  dropline trace pit.yaml flight.dlr --to 2s --vcd bus.vcd --pcapng bus.pcapng",
            "  dropline trace pit.yaml flight.dlr --from 60s --to 61s --segment front --timeline bus.svg",
            "  dropline trace bus.yaml --for 1s --vcd bus.vcd   the load described in the pit file",
            "",
            "Exit codes:  0 written   2 the input is wrong   3 our own fault"
        })
final class TraceCommand implements Callable<Integer> {
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
            names = "--from",
            paramLabel = "T",
            converter = Durations.class,
            description = "Write from this time in the recording on, as in 90s or 2m30s. Default: its beginning.")
    private long fromNanos;

    @Option(
            names = "--to",
            paramLabel = "T",
            converter = Durations.class,
            description = "Write up to this time in the recording. With --for: its end, if left out.")
    private @Nullable Long toNanos;

    @Option(
            names = "--for",
            paramLabel = "T",
            converter = Durations.class,
            description = "In place of a recording: run the load the pit file describes for this long.")
    private @Nullable Long forNanos;

    @Option(
            names = "--segment",
            paramLabel = "NAME",
            description = "The segment that is drawn. Default: the first. The other files hold all of them.")
    private @Nullable String segment;

    @Option(names = "--vcd", paramLabel = "FILE", description = "Write the waveforms: levels and driver enables.")
    private @Nullable Path vcd;

    @Option(
            names = "--resolution",
            paramLabel = "STEP",
            description = "What the waveforms count time in: 1us, 100ns or 1ns. Default: 100ns.")
    private String resolution = Resolution.HUNDRED_NANOSECONDS.word();

    @Option(names = "--pcapng", paramLabel = "FILE", description = "Write the frames: one a packet, with its fate.")
    private @Nullable Path pcapng;

    @Option(names = "--timeline", paramLabel = "FILE", description = "Draw who talked when, with the margins (SVG).")
    private @Nullable Path timeline;

    @Option(
            names = "--seed",
            paramLabel = "N",
            description = "The run's seed; the same seed gives the same run. Default: 1.")
    private long seed = 1;

    @Option(
            names = "--fault",
            paramLabel = "FAULT",
            description = "Let this go wrong, as in \"dead-node NODE at 60s for 30s\"; may be given several times. See"
                    + " dropline faults.")
    private List<String> faults = List.of();

    @Option(names = "--lenient", description = "Skip bad rows of the recording and count them, instead of stopping.")
    private boolean lenient;

    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Mixin
    final Debug debug = new Debug();

    TraceCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws IOException {
        if (vcd == null && pcapng == null && timeline == null) {
            throw usage("say what to write: --vcd FILE, --pcapng FILE, --timeline FILE.svg, or several of them");
        }
        Stretch stretch = stretch();
        PitFile.Understood understood = PitFiles.read(pit);
        if (recording != null) {
            InputFiles.mustExist(recording, "recording");
        }
        mustBeWritable();
        Resolution step = step();
        if (vcd != null) {
            mustShow(step, understood.pit());
        }
        new TraceSession(
                        console,
                        understood.pit(),
                        opening(understood, stretch),
                        seed,
                        faults(understood.pit(), stretch),
                        stretch,
                        new TraceSession.Outputs(vcd, step, pcapng, timeline, segmentIndex(understood.pit())))
                .run();
        return ExitCode.PASS;
    }

    private List<Fault> faults(Pit understood, Stretch stretch) {
        FaultOptions.Read read = FaultOptions.read(faults, understood, OptionalLong.of(stretch.toNanos()));
        if (!read.problems().isEmpty()) {
            throw PitFiles.wrong(read.problems());
        }
        return read.faults();
    }

    private Stretch stretch() {
        if (recording == null && forNanos == null) {
            throw usage("a recording is missing; or, for a pit that describes a load, --for 10s");
        }
        if (recording != null && forNanos != null) {
            throw usage("--for plays the load the pit describes; leave out " + recording + " or --for");
        }
        Long to = toNanos == null ? forNanos : toNanos;
        if (to == null) {
            throw usage("--to is missing: up to which time in the recording to write");
        }
        if (to <= fromNanos) {
            throw usage("--to must lie after --from");
        }
        if (forNanos != null && to > forNanos) {
            throw usage("--to must not lie after the end of the run, which --for sets");
        }
        return new Stretch(fromNanos, to);
    }

    private void mustBeWritable() throws IOException {
        List<Path> others = new ArrayList<>(recording == null ? List.of(pit) : List.of(pit, recording));
        for (Path file : Stream.of(vcd, pcapng, timeline).filter(f -> f != null).toList()) {
            OutputFiles.mustBeWritable(file, others.toArray(Path[]::new));
            if (others.contains(file)) {
                throw new WrongInput("dropline: " + file + " is named twice; give each file a name of its own");
            }
            others.add(file);
        }
    }

    private Resolution step() {
        String asked = resolution.toLowerCase(Locale.ROOT).replace(" ", "");
        for (Resolution known : Resolution.values()) {
            if (known.word().equals(asked)) {
                return known;
            }
        }
        throw usage("--resolution must be 1us, 100ns or 1ns, not '" + resolution + "'");
    }

    private static void mustShow(Resolution step, Pit pit) {
        pit.segments().stream()
                .filter(segment -> !step.shows(segment.baud()))
                .findFirst()
                .ifPresent(segment -> {
                    throw new WrongInput("dropline: bits of segment " + segment.name() + " are too short for steps of "
                            + step.word() + " (" + segment.baud() + " baud); choose a finer --resolution");
                });
    }

    private int segmentIndex(Pit understood) {
        if (segment == null) {
            return 0;
        }
        for (int i = 0; i < understood.segments().size(); i++) {
            if (understood.segments().get(i).name().equals(segment)) {
                return i;
            }
        }
        String known = understood.segments().stream().map(s -> s.name()).collect(Collectors.joining(", "));
        throw new WrongInput("dropline: " + pit + " has no segment '" + segment + "'; it has: " + known);
    }

    private Source.Opening opening(PitFile.Understood understood, Stretch stretch) {
        long end = TraceSession.endNanos(stretch);
        if (recording != null) {
            ReadOptions options = new ReadOptions(lenient, understood.recordingTime());
            Path file = recording;
            return () -> Source.recording(file, understood.pit(), options, 0, end);
        }
        Pit.Load load = understood.pit().load();
        if (load == null) {
            throw new WrongInput(
                    "dropline: " + pit + " describes no load, so --for has nothing to play; give a recording,"
                            + " or write a load into the pit file (load: every, changes)");
        }
        return () -> Source.load(understood.pit(), load, end);
    }

    private ParameterException usage(String message) {
        return new ParameterException(spec.commandLine(), message);
    }
}
