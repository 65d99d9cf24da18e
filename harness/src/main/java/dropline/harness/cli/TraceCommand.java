package dropline.harness.cli;

import dropline.bus.fault.Fault;
import dropline.bus.pit.Pit;
import dropline.harness.capture.Resolution;
import dropline.harness.capture.Stretch;
import dropline.harness.pitfile.PitFile;
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
import picocli.CommandLine.Option;

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
            "dropline trace PIT RECORDING [--controls FILE] [--from T] --to T [--segment NAME] [--seed N]",
            "               [--lenient] [--fault FAULT]... [--vcd FILE] [--resolution STEP]",
            "               [--pcapng FILE] [--timeline FILE.svg]",
            "dropline trace PIT --for T [--from T] [--to T] ...",
            "dropline trace PIT --heard CAPTURE [--wire NAME] [--segment NAME] [--from T] --to T",
            "               [--vcd FILE] [--pcapng FILE] [--timeline FILE.svg]"
        },
        descriptionHeading = "%n",
        description = {
            "Plays a recorded flight through the simulated pit, from its beginning, and writes what stood on",
            "the wire from one time to another: as a waveform for viewers and decoders (VCD), as packets for",
            "packet analysers (pcapng), as a drawing (SVG). Frames that begin in the stretch are whole. --heard",
            "does so with what was heard on a real pair."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline trace pit.yaml flight.dlr --from 60s --to 60.05s --timeline bus.svg",
            "  dropline trace pit.yaml flight.dlr --to 2s --vcd bus.vcd --pcapng bus.pcapng",
            "  dropline trace pit.yaml flight.dlr --from 60s --to 61s --segment front --timeline bus.svg",
            "  dropline trace bus.yaml --for 1s --vcd bus.vcd   the load described in the pit file",
            "  dropline trace pit.yaml --heard front.txt --segment front --from 12s --to 12.1s --timeline bus.svg",
            "",
            "Exit codes:  0 written   2 the input is wrong   3 our own fault"
        })
final class TraceCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private Played played;

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
            names = "--heard",
            paramLabel = "CAPTURE",
            description =
                    "In place of a run: what 'listen' captured on a segment, or an analyser's VCD or CSV of edges.")
    private @Nullable Path heard;

    @Option(names = "--wire", paramLabel = "NAME", description = "Which of the analyser's wires, where it has several.")
    private @Nullable String wire;

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

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private Injected injected;

    @Mixin
    final Debug debug = new Debug();

    TraceCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws IOException {
        if (vcd == null && pcapng == null && timeline == null) {
            throw played.usage("say what to write: --vcd FILE, --pcapng FILE, --timeline FILE.svg, or several of them");
        }
        if (heard != null) {
            return ofHeard(heard);
        }
        Stretch stretch = stretch();
        PitFile.Understood understood = played.read();
        mustBeWritable();
        if (vcd != null) {
            mustShow(step(), understood.pit());
        }
        Pit pit = understood.pit();
        List<Fault> faults = injected.read(pit, OptionalLong.of(stretch.toNanos()));
        write(
                pit,
                "seed " + played.seed(),
                faults,
                stretch,
                segmentIndex(pit),
                TraceSession.simulated(console, pit, opening(understood, stretch), played.seed(), faults));
        return ExitCode.PASS;
    }

    private void write(Pit pit, String run, List<Fault> faults, Stretch stretch, int drawn, TraceSession.Player player)
            throws IOException {
        new TraceSession(
                        console,
                        pit,
                        player,
                        run,
                        faults,
                        stretch,
                        new TraceSession.Outputs(vcd, step(), pcapng, timeline, drawn))
                .write();
    }

    /** What was heard on one segment, in place of a run. */
    private int ofHeard(Path file) throws IOException {
        played.mustHaveNoRecording();
        if (forNanos != null || !injected.isEmpty()) {
            throw played.usage("--heard is in place of a run; leave --for and --fault out");
        }
        Long to = toNanos;
        if (to == null || to <= fromNanos) {
            throw played.usage(
                    to == null ? "--to is missing: up to which time to write" : "--to must lie after --from");
        }
        InputFiles.mustExist(file, "capture");
        Pit pit = played.read().pit();
        mustBeWritable();
        if (vcd != null) {
            mustShow(step(), pit);
        }
        int index = segmentIndex(pit);
        SegmentChoice.mustBeSpoken(pit.segments().get(index));
        write(
                pit.alone(index),
                "heard, drivers inferred",
                List.of(),
                new Stretch(fromNanos, to),
                0,
                new HeardPlayer(pit.alone(index), file, wire));
        return ExitCode.PASS;
    }

    private Stretch stretch() {
        if (forNanos == null) {
            played.mustHaveRecording("; or, for a pit that describes a load, --for 10s");
        } else {
            played.mustHaveNoRecording();
        }
        Long to = toNanos == null ? forNanos : toNanos;
        if (to == null) {
            throw played.usage("--to is missing: up to which time in the recording to write");
        }
        if (to <= fromNanos) {
            throw played.usage("--to must lie after --from");
        }
        if (forNanos != null && to > forNanos) {
            throw played.usage("--to must not lie after the end of the run, which --for sets");
        }
        return new Stretch(fromNanos, to);
    }

    private void mustBeWritable() throws IOException {
        List<Path> others = new ArrayList<>();
        others.add(played.pit());
        if (played.recording() != null) {
            others.addAll(played.recording().paths());
        }
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
        throw played.usage("--resolution must be 1us, 100ns or 1ns, not '" + resolution + "'");
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
        throw new WrongInput("dropline: " + played.pit() + " has no segment '" + segment + "'; it has: " + known);
    }

    private Source.Opening opening(PitFile.Understood understood, Stretch stretch) {
        long end = TraceSession.endNanos(stretch);
        return played.recording() == null
                ? played.load(understood, end)
                : played.stretch(understood, played.recording(), 0, end);
    }
}
