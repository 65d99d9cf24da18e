package dropline.harness.cli;

import dropline.bus.fault.FaultKind;
import dropline.bus.pit.Pit;
import dropline.harness.fault.FaultOptions;
import dropline.harness.json.SurvivalJson;
import dropline.harness.pitfile.PitFile;
import dropline.harness.recording.PitFeed;
import dropline.harness.recording.RecordingFiles;
import dropline.harness.replay.Progress;
import dropline.harness.replay.RunLimit;
import dropline.harness.replay.Source;
import dropline.harness.replay.StoppedRunException;
import dropline.harness.replay.Sweep;
import dropline.harness.report.SurvivalText;
import dropline.harness.survive.Survival;
import dropline.harness.survive.Survive;
import dropline.harness.survive.SurviveException;
import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code dropline survive}: every single fault in turn. */
@Command(
        name = "survive",
        header = "Let every single fault strike in turn and see which panels recover, and when.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        parameterListHeading = "%n",
        optionListHeading = "%n",
        sortOptions = false,
        customSynopsis = {
            "dropline survive PIT RECORDING [--seed N] [--kinds LIST] [--at T] [--for T] [--from T] [--to T]",
            "                 [--controls FILE] [--lenient] [--json FILE|-]"
        },
        descriptionHeading = "%n",
        description = {
            "Replays the flight once as it is, then once for every fault of the catalogue on every node,",
            "segment, indicator and control that it can strike. Says first what never recovers, then, by",
            "kind of fault, which panel suffers most, its worst latency, and the time from the end of the",
            "fault until every change is shown within its limit again. Takes minutes for a whole pit;",
            "--kinds and --to make it shorter."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline survive pit.yaml flight.dlr",
            "  dropline survive pit.yaml flight.dlr --kinds dead-node,reset,noise-burst",
            "  dropline survive pit.yaml flight.dlr --to 2m --at 30s --for 2s --json matrix.json",
            "",
            "Exit codes:  0 everything recovers   1 something never does   2 the input is wrong   3 our own fault"
        })
final class SurviveCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private Played played;

    @Option(
            names = "--kinds",
            paramLabel = "LIST",
            split = ",",
            description = "Only these kinds of fault, with commas between. Default: all ('dropline faults').")
    private List<String> kinds = new ArrayList<>();

    @Option(
            names = "--at",
            paramLabel = "T",
            converter = Durations.class,
            description = "When each fault begins, from where the run does. Default: after a third of it.")
    private @Nullable Long atNanos;

    @Option(
            names = "--for",
            paramLabel = "T",
            converter = Durations.class,
            description = "How long each fault lasts that lasts at all. Default: 5s.")
    private long forNanos = 5_000_000_000L;

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

    @Mixin
    final Debug debug = new Debug();

    SurviveCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws IOException {
        List<FaultKind> chosen = kinds();
        if (toNanos <= fromNanos) {
            throw played.usage("--to must lie after --from");
        }
        if (forNanos == 0) {
            throw played.usage("--for must be longer than nothing");
        }
        RecordingFiles recording = played.mustHaveRecording("");
        PitFile.Understood understood = played.read(json.file());
        Survival survival =
                survive(understood.pit(), played.stretch(understood, recording, fromNanos, toNanos), chosen);
        survival.losses().forEach(loss -> console.err().println("dropline: " + loss));
        json.write(console, out -> SurvivalJson.write(survival, out), SurvivalText.of(survival));
        return survival.survives() ? ExitCode.PASS : ExitCode.FAIL;
    }

    private Survival survive(Pit pit, Source.Opening opening, List<FaultKind> chosen) throws IOException {
        int threads = Math.max(1, Runtime.getRuntime().availableProcessors());
        Sweep sweep = new Sweep(opening, played.seed(), threads, RunLimit.USUAL);
        OptionalLong at = atNanos == null ? OptionalLong.empty() : OptionalLong.of(atNanos);
        Survive.Plan plan = new Survive.Plan(Version.number(), played.name(), played.seed(), chosen, at, forNanos);
        Progress progress = ProgressBar.on(console);
        try {
            return new Survive(pit, sweep, plan).run(progress);
        } catch (SurviveException | StoppedRunException wrong) {
            throw new WrongInput("dropline: " + wrong.getMessage(), wrong);
        } finally {
            ProgressBar.end(progress);
        }
    }

    /** Those named, in the catalogue's order, each once; all where none is named. */
    private List<FaultKind> kinds() {
        Set<FaultKind> named = EnumSet.noneOf(FaultKind.class);
        List<String> unknown = new ArrayList<>();
        for (String word : kinds) {
            FaultOptions.kind(word.strip()).ifPresentOrElse(named::add, () -> unknown.add(word.strip()));
        }
        if (!unknown.isEmpty()) {
            StringBuilder message = new StringBuilder();
            for (String word : unknown) {
                message.append("dropline: there is no kind of fault '")
                        .append(word)
                        .append('\'');
                FaultOptions.nearest(word)
                        .ifPresent(near ->
                                message.append("; did you mean ").append(near).append('?'));
                message.append('\n');
            }
            throw new WrongInput(message + "Try 'dropline faults', which shows them all.");
        }
        return kinds.isEmpty() ? List.of(FaultKind.values()) : List.copyOf(named);
    }
}
