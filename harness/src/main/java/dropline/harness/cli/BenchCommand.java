package dropline.harness.cli;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Program;
import dropline.bus.pit.Segment;
import dropline.harness.bench.BenchJUnit;
import dropline.harness.bench.BenchPage;
import dropline.harness.bench.BenchResult;
import dropline.harness.bench.BenchText;
import dropline.harness.bench.Examination;
import dropline.harness.bench.Inside;
import dropline.harness.bench.Loops;
import dropline.harness.bench.Subject;
import dropline.harness.bench.Thoroughness;
import dropline.harness.bench.Traffic;
import dropline.harness.json.BenchJson;
import dropline.harness.link.BoardLink;
import dropline.harness.link.Link;
import dropline.harness.pitfile.PitFile;
import dropline.harness.problem.Nearest;
import dropline.harness.recording.ReadOptions;
import dropline.harness.recording.RecordingFiles;
import dropline.harness.replay.Source;
import dropline.harness.verdict.Outcome;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.OptionalLong;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code dropline bench}: whether one board is fit to wire. */
@Command(
        name = "bench",
        header = "Examine one board, modelled or real, and say whether it is fit to wire.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        optionListHeading = "%n",
        sortOptions = false,
        customSynopsis = {
            "dropline bench --pit PIT --node NODE [--port PORT|--tcp HOST:PORT] [--floor T] [--quick]",
            "               [--recording FILE] [--passport FILE [--like PROFILE]] [--html FILE] [--junit FILE]",
            "               [--json FILE|-] [--fault FAULT]...",
            "dropline bench --protocol NAME [--layout FILE] --baud N --address N [--time-out T]",
            "               --port PORT|--tcp HOST:PORT ...",
            "dropline bench ... --firmware FILE --chip CHIP [--clock MHZ] [--driver-enable PIN] [--usart N]"
        },
        descriptionHeading = "%n",
        description = {
            "Asks the board everything that can be asked over a link: whether and how soon it answers, whether",
            "it is silent when others are spoken to, what damage and noise do to it, whether it keeps up when",
            "frames come without a pause, when it lets go of the line, how far off the rate may be, whether it",
            "comes back from a restart, and whether it goes on for long; with --recording, amid the traffic of",
            "its segment. Without a port it examines the board as the pit file models it, in simulated time; with",
            "--firmware, or where the pit file names an image, the program that would be flashed, run",
            "instruction by instruction on an emulated AVR. A limit that is tighter than what the adapter may",
            "add (--floor) is undecided, never passed.",
            "Connect the board alone, at one end of the adapter."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline bench --pit pit.yaml --node oil-board",
            "  dropline bench --pit pit.yaml --node oil-board --port COM7 --floor 1ms --passport oil-board.yaml",
            "  dropline bench --pit pit.yaml --node oil-board --recording flight.dlr --html oil-board.html",
            "  dropline bench --protocol modbus-rtu --baud 19200 --address 7 --port COM7",
            "  dropline bench --pit pit.yaml --node oil-board --firmware oil.hex --chip atmega328p",
            "",
            "Exit codes:  0 fit   1 not fit, or undecided   2 the input is wrong   3 our own fault"
        })
final class BenchCommand implements Callable<Integer> {
    private static final long TRAFFIC_NANOS = 10_000_000_000L;
    private static final long QUICK_TRAFFIC_NANOS = 2_000_000_000L;

    private final Console console;

    @ArgGroup(exclusive = true, multiplicity = "1")
    @SuppressWarnings("NullAway.Init")
    private Examined examined;

    /** Which board. */
    static final class Examined {
        @ArgGroup(exclusive = false)
        private @Nullable OfPit ofPit;

        @ArgGroup(exclusive = false)
        private @Nullable OneBoard alone;
    }

    /** A board that a pit file describes. */
    static final class OfPit {
        @Option(names = "--pit", paramLabel = "PIT", required = true, description = "The pit file that has the board.")
        @SuppressWarnings("NullAway.Init")
        private Path file;

        @Option(
                names = "--node",
                paramLabel = "NODE",
                required = true,
                description = "The board's name in the pit file.")
        @SuppressWarnings("NullAway.Init")
        private String node;
    }

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private PortOptions port;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private FirmwareOptions firmware;

    @Option(
            names = "--floor",
            paramLabel = "T",
            converter = Durations.class,
            description = "What the adapter may add to every instant. Default: 1ms, a guess.")
    private long floorNanos = 1_000_000L;

    @Option(names = "--quick", description = "A first look: a tenth of the trials or fewer.")
    private boolean quick;

    @Option(names = "--seed", paramLabel = "N", description = "The seed of a modelled board. Default: 1.")
    private long seed = 1;

    @Option(
            names = "--passport",
            paramLabel = "FILE",
            description = "Write what was measured: a part of a pit file that yours can include.")
    private @Nullable Path passport;

    @Option(
            names = "--like",
            paramLabel = "PROFILE",
            description = "The profile that states what was not measured. Default: 8-bit loop.")
    private String like = "8-bit loop";

    @Option(
            names = "--recording",
            paramLabel = "FILE",
            description = "Play the pit's traffic of this flight around it: 10 s of it, 2 s with --quick.")
    private @Nullable Path recording;

    @Option(names = "--html", paramLabel = "FILE", description = "Write the report: one file, readable offline.")
    private @Nullable Path html;

    @Option(names = "--junit", paramLabel = "FILE", description = "Write the verdicts as JUnit XML.")
    private @Nullable Path junit;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private JsonOutput json;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private Injected injected;

    @Mixin
    final Debug debug = new Debug();

    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec command;

    BenchCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws IOException {
        OfPit ofPit = examined.ofPit;
        OneBoard alone = examined.alone;
        if (alone != null && !port.isGiven() && !firmware.isGiven()) {
            throw new ParameterException(
                    command.commandLine(),
                    "--port is missing (or --tcp, or --firmware); without one, a pit file models the board");
        }
        if (firmware.isGiven() && port.isGiven()) {
            throw new ParameterException(
                    command.commandLine(), "--firmware runs a program in place of a board on a port");
        }
        firmware.mustBeOfAProgram(command.commandLine());
        if (alone != null && recording != null) {
            throw new ParameterException(command.commandLine(), "--recording needs --pit: it says who else is there");
        }
        Path[] inputs = Stream.of(ofPit == null ? null : ofPit.file, recording)
                .filter(Objects::nonNull)
                .toArray(Path[]::new);
        for (Path written : new Path[] {passport, html, junit, json.file()}) {
            OutputFiles.mustBeWritable(written, inputs);
        }
        PitFile.Understood described =
                alone != null ? alone.described() : PitFiles.read(Objects.requireNonNull(ofPit).file);
        Pit pit = described.pit();
        Subject subject = ofPit == null ? new Subject(pit, 0, 0) : subject(pit, ofPit);
        Segment on = pit.segments().get(subject.segment());
        SegmentChoice.mustBeSpoken(on);
        port.caution(console);
        Program program = firmware.isGiven() ? firmware.program() : programOf(subject);
        if (program != null && !injected.isEmpty()) {
            throw new ParameterException(
                    command.commandLine(), "--fault is for a modelled board; a program has the faults it has");
        }
        try (Link link = link(subject, program)) {
            Thoroughness thoroughness = quick ? Thoroughness.QUICK : Thoroughness.FULL;
            Inside inside = program != null && link instanceof BoardLink board
                    ? new Inside(board.counterpart(), program.image())
                    : null;
            BenchResult result = new Examination(
                            subject, link, floorNanos, thoroughness, traffic(subject, described), inside)
                    .run(this::progress);
            if (console.terminal()) {
                console.err().print("\r                    \r");
            }
            write(result);
            return result.outcome() == Outcome.PASS ? ExitCode.PASS : ExitCode.FAIL;
        }
    }

    /** The program that the pit file names for the node, unless the board itself is at a port. */
    private @Nullable Program programOf(Subject subject) {
        return port.isGiven() ? null : subject.described().program();
    }

    private Link link(Subject subject, @Nullable Program program) throws IOException {
        Segment on = subject.pit().segments().get(subject.segment());
        if (program != null) {
            return new BoardLink(program.powered(), program.usart(), program.driverEnable(), on.baud(), on.format());
        }
        return port.isGiven()
                ? port.open(on.baud(), on.format())
                : Loops.to(subject, seed, injected.read(subject.pit(), OptionalLong.empty()));
    }

    private @Nullable Traffic traffic(Subject subject, PitFile.Understood described) throws IOException {
        if (recording == null) {
            return null;
        }
        InputFiles.mustExist(recording, "recording");
        RecordingFiles files = RecordingFiles.of(recording);
        ReadOptions options = new ReadOptions(false, described.recordingTime());
        files.mustAgree(options);
        long lasts = quick ? QUICK_TRAFFIC_NANOS : TRAFFIC_NANOS;
        return Traffic.of(subject, () -> Source.recording(files, subject.pit(), options, 0, lasts), seed, lasts);
    }

    private void progress(double share) {
        if (console.terminal()) {
            console.err().print("\rexamined " + Math.round(share * 100) + "%  ");
            console.err().flush();
        }
    }

    private void write(BenchResult result) throws IOException {
        if (passport != null && result.passport().trials() == 0) {
            console.err().println("No passport is written: no reply was measured.");
        } else if (passport != null) {
            OutputFiles.write(
                    passport,
                    result.passport()
                            .text(
                                    like,
                                    LocalDate.now(java.time.ZoneId.systemDefault())
                                            .toString(),
                                    result.over()));
        }
        if (html != null) {
            OutputFiles.write(html, BenchPage.html(result));
        }
        if (junit != null) {
            OutputFiles.write(junit, BenchJUnit.of(result));
        }
        json.write(console, out -> BenchJson.write(result, out), BenchText.of(result));
    }

    private static Subject subject(Pit pit, OfPit wanted) {
        List<Layout.NodePlace> places = Layout.of(pit).nodes();
        for (Layout.NodePlace place : places) {
            if (place.node().name().equals(wanted.node)) {
                Segment segment = pit.segments().get(place.segment());
                return new Subject(pit, place.segment(), segment.nodes().indexOf(place.node()));
            }
        }
        List<String> names = places.stream().map(place -> place.node().name()).toList();
        String near = Nearest.to(wanted.node, names)
                .map(name -> "; did you mean " + name + "?")
                .orElse("");
        throw new WrongInput("dropline: there is no board '" + wanted.node + "' in " + wanted.file + near);
    }
}
