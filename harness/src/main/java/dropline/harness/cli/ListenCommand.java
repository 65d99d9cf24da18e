package dropline.harness.cli;

import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.harness.finding.Finding;
import dropline.harness.json.ListenJson;
import dropline.harness.link.Arrival;
import dropline.harness.link.Link;
import dropline.harness.listen.CaptureFile;
import dropline.harness.listen.Guard;
import dropline.harness.listen.Hearer;
import dropline.harness.listen.ListenText;
import dropline.harness.listen.Listening;
import dropline.harness.listen.StateLog;
import dropline.harness.report.FindingText;
import dropline.harness.report.HtmlReport;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code dropline listen}: who says what on a real pair. */
@Command(
        name = "listen",
        header = "Listen to a pair on which others talk: who answers, how soon, and what goes wrong.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        parameterListHeading = "%n",
        optionListHeading = "%n",
        sortOptions = false,
        customSynopsis = {
            "dropline listen PIT [--segment S] --port PORT|--tcp HOST:PORT [-o CAPTURE] [--recording FILE]",
            "                [--live] [--for T] [--guard DIR [--before T] [--after T] [--at-most MB]]",
            "dropline listen PIT [--segment S] --from FILE [--wire NAME] [--recording FILE]",
            "                [--trace FILE] [--html FILE] [--json FILE|-]",
            "dropline listen --protocol NAME [--layout FILE] --baud N --port PORT|--tcp HOST:PORT|--from FILE ..."
        },
        descriptionHeading = "%n",
        description = {
            "Hears both sides of a segment, by the protocol that the pit file gives it, and never sends a byte:",
            "per address how often it was asked and answered, reply gaps, how often it restarted; and how much",
            "is no frame at all; then what is wrong, as far as it can be heard. What was heard can be kept as a",
            "capture and looked at again; the state that the controller sends can be written as a recording.",
            "Ends with Ctrl-C, or after --for."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline listen pit.yaml --segment front --port COM7 --live",
            "  dropline listen pit.yaml --segment front --port COM7 -o front.txt --recording flight.long.csv",
            "  dropline listen pit.yaml --segment front --from front.txt --html front.html",
            "  dropline listen --protocol modbus-rtu --baud 19200 --port COM7",
            "  dropline listen pit.yaml --segment front --port COM7 --guard nights --before 30s",
            "",
            "Exit codes:  0 listened   1 nothing was heard   2 the input is wrong   3 our own fault"
        })
final class ListenCommand implements Callable<Integer> {
    private static final long LOOK_NANOS = 50_000_000L;
    private static final long SHOW_NANOS = 500_000_000L;

    private final Console console;

    @Parameters(paramLabel = "PIT", arity = "0..1", description = "The pit file (YAML).")
    private @Nullable Path file;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private SegmentChoice segment;

    @ArgGroup(exclusive = false)
    private @Nullable SpokenByOptions spoken;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private HeardOptions heard;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "CAPTURE",
            description = "Keep every byte with its time, as text.")
    private @Nullable Path capture;

    @ArgGroup(exclusive = false)
    private @Nullable Guarding guarding;

    /** How to keep only the time around trouble. */
    static final class Guarding {
        @Option(
                names = "--guard",
                required = true,
                paramLabel = "DIR",
                description = "Keep only the time around trouble (no answer, a restart, what is no frame), a capture"
                        + " each, in this folder.")
        @SuppressWarnings("NullAway.Init")
        private Path folder;

        @Option(
                names = "--before",
                paramLabel = "T",
                converter = Durations.class,
                description = "How much before trouble is kept. Default: 30s.")
        private long beforeNanos = 30_000_000_000L;

        @Option(
                names = "--after",
                paramLabel = "T",
                converter = Durations.class,
                description = "How much after it. Default: 10s.")
        private long afterNanos = 10_000_000_000L;

        @Option(
                names = "--at-most",
                paramLabel = "MB",
                description = "All captures together take so many megabytes at most. Default: 2000.")
        private long mostMegabytes = 2_000;
    }

    @Option(
            names = "--recording",
            paramLabel = "FILE",
            description = "Write the state that is sent as a recording (long CSV).")
    private @Nullable Path recording;

    @Option(names = "--trace", paramLabel = "FILE", description = "Write what was heard as a trace, an event a line.")
    private @Nullable Path trace;

    @Option(names = "--html", paramLabel = "FILE", description = "Write the segment's report: one file.")
    private @Nullable Path html;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private JsonOutput json;

    @Option(names = "--live", description = "Show the table all the time; only where a person watches.")
    private boolean live;

    @Option(
            names = "--for",
            paramLabel = "T",
            converter = Durations.class,
            description = "End after this time, as in 90s, 30m.")
    private @Nullable Long forNanos;

    @Mixin
    final Debug debug = new Debug();

    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec command;

    ListenCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws IOException {
        heard.check();
        Path described = file;
        if ((described == null) == (spoken == null)) {
            throw new ParameterException(
                    command.commandLine(),
                    spoken == null ? "PIT is missing (or --protocol)" : "--protocol is in place of PIT; leave one out");
        }
        if (spoken != null && (recording != null || trace != null || html != null)) {
            throw new ParameterException(
                    command.commandLine(), "--recording, --trace and --html need PIT: it says what is on the segment");
        }
        Path[] inputs =
                Stream.of(described, heard.file()).filter(Objects::nonNull).toArray(Path[]::new);
        for (Path written : new Path[] {capture, recording, trace, html, json.file()}) {
            OutputFiles.mustBeWritable(written, inputs);
        }
        return described == null
                ? listen(Objects.requireNonNull(spoken).described(1).pit(), 0, null)
                : ofPit(PitFiles.read(described).pit());
    }

    private int ofPit(Pit pit) throws IOException {
        int index = segment.spokenIn(pit);
        try (Witness witness = new Witness(pit, index, heard.throughAnAdapter(), trace)) {
            return listen(pit, index, witness);
        }
    }

    private int listen(Pit pit, int index, @Nullable Witness witness) throws IOException {
        Segment chosen = pit.segments().get(index);
        try (StateLog states = recording == null ? null : StateLog.create(recording, pit, index)) {
            List<Hearer> hearers = new ArrayList<>();
            if (states != null) {
                hearers.add(states);
            }
            if (witness != null) {
                hearers.add(witness.hearer());
            }
            Listening listening = new Listening(pit, index, hearers);
            Path from = heard.file();
            if (from != null) {
                heard.read(from, chosen.baud(), chosen.format(), source -> source.feed(listening));
            } else {
                hear(chosen, listening, witness);
            }
            listening.end();
            tell(listening, witness);
            if (states != null) {
                console.out()
                        .println("Wrote " + recording + ": " + states.heard() + " of "
                                + pit.signals().size()
                                + " signals were heard; the others stand at nought, or as near as they can.");
            }
            console.out().flush();
            return listening.bytes() == 0 ? ExitCode.FAIL : ExitCode.PASS;
        }
    }

    private void tell(Listening listening, @Nullable Witness witness) throws IOException {
        boolean adapter = heard.throughAnAdapter();
        List<Finding> findings = witness == null ? List.of() : witness.findings();
        if (html != null && witness != null) {
            String name = heard.file() == null
                    ? "what was heard"
                    : String.valueOf(heard.file().getFileName());
            OutputFiles.write(html, HtmlReport.of(witness.result(name, caveats(listening, adapter))));
        }
        json.write(
                console,
                out -> ListenJson.write(listening, adapter, findings, out),
                ListenText.of(listening, adapter, witness != null) + FindingText.of(findings));
    }

    private static List<String> caveats(Listening listening, boolean adapter) {
        List<String> caveats = new ArrayList<>();
        caveats.add("Listened to: which polls are tries of one, and when a round begins, is inferred from what was"
                + " said; what panels show cannot be heard.");
        if (adapter) {
            caveats.add("Gaps and times are this computer's: what the adapter adds is in them.");
        }
        if (listening.unsound() > 0) {
            caveats.add(listening.unsound() + " of " + listening.bytes() + " bytes were part of no sound frame.");
        }
        return caveats;
    }

    private void hear(Segment chosen, Listening listening, @Nullable Witness witness) throws IOException {
        AtomicBoolean stop = new AtomicBoolean();
        EndOfProcess end = EndOfProcess.watch(() -> stop.set(true), console);
        try (Link link = heard.port().open(chosen.baud(), chosen.format());
                CaptureFile kept = capture == null ? null : CaptureFile.create(capture);
                Guard guard = guard()) {
            console.err().println("Listening on " + link.where() + "; Ctrl-C ends it.");
            Marks marks = guard == null ? new Marks() : Marks.typedAt(console);
            if (guard != null && console.terminal()) {
                console.err().println("Type m and Enter when you see it happen: that is kept as well.");
            }
            long until = forNanos == null ? Long.MAX_VALUE : link.now() + forNanos;
            long show = link.now() + SHOW_NANOS;
            while (!stop.get() && link.now() < until) {
                Arrival arrival = link.await(Math.min(until, link.now() + LOOK_NANOS));
                if (arrival == null) {
                    listening.quiet(link.now());
                } else {
                    listening.take(arrival);
                    say(arrival);
                    if (witness != null) {
                        witness.merge();
                    }
                }
                if (arrival instanceof Arrival.Received received) {
                    keep(received, listening.troubles() + marks.count(), kept, guard);
                }
                if (live && console.terminal() && link.now() >= show) {
                    show = link.now() + SHOW_NANOS;
                    console.err().print("\u001b[H\u001b[2J" + ListenText.of(listening, true, witness != null));
                    console.err().flush();
                }
            }
            if (guard != null) {
                console.out()
                        .println("Kept the time around trouble " + guard.files() + " times"
                                + (guard.isFull() ? "; then the room it may take was used up." : "."));
            }
            int unused = end.completed(listening.bytes() == 0 ? ExitCode.FAIL : ExitCode.PASS);
        } finally {
            end.release();
        }
    }

    private static void keep(
            Arrival.Received received, long troubles, @Nullable CaptureFile kept, @Nullable Guard guard)
            throws IOException {
        if (kept != null) {
            kept.add(received);
        }
        if (guard != null) {
            guard.take(received, troubles);
        }
    }

    private @Nullable Guard guard() {
        if (guarding == null) {
            return null;
        }
        if (!Guard.canUse(guarding.folder)) {
            throw new WrongInput(
                    "dropline: " + guarding.folder + " is no folder that can be written to; make it first");
        }
        return new Guard(
                guarding.folder, guarding.beforeNanos, guarding.afterNanos, guarding.mostMegabytes * 1_000_000L);
    }

    private void say(Arrival arrival) {
        if (arrival instanceof Arrival.Lost lost) {
            console.err().println("dropline: " + lost.why());
        } else if (arrival instanceof Arrival.Back) {
            console.err().println("dropline: it is back");
        }
    }
}
