package dropline.harness.cli;

import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.harness.json.PlanJson;
import dropline.harness.json.SizeJson;
import dropline.harness.origin.Trials;
import dropline.harness.pitfile.PitFile;
import dropline.harness.plan.Planned;
import dropline.harness.planned.PlanPage;
import dropline.harness.planned.PlanText;
import dropline.harness.recording.PitFeed;
import dropline.harness.recording.RecordingFiles;
import dropline.harness.replay.Progress;
import dropline.harness.replay.StoppedRunException;
import dropline.harness.size.Judging;
import dropline.harness.size.Limits;
import dropline.harness.size.SizePlan;
import dropline.harness.size.SizeResult;
import dropline.harness.size.Sizing;
import dropline.harness.sized.SizePage;
import dropline.harness.sized.SizeText;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code dropline size}: how many more panels a segment takes, what limits it, and what would help. */
@Command(
        name = "size",
        header = "Say how many more panels fit on a segment, what limits it, and what would help.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        parameterListHeading = "%n",
        optionListHeading = "%n",
        sortOptions = false,
        customSynopsis = {
            "dropline size PIT [RECORDING] [--segment S] [--add PANEL|PRESET]... [--baud LIST]",
            "              [--margin PERCENT] [--seeds N] [--seed N] [--controls FILE] [--lenient]",
            "              [--json FILE|-] [--html FILE]",
            "dropline size PIT [RECORDING] --plan [--write FILE] [--same-segments] [--baud LIST]",
            "              [--margin PERCENT] [--seeds N] [--seed N] [--json FILE|-] [--html FILE]"
        },
        descriptionHeading = "%n",
        description = {
            "Adds panels to a segment, one by one, and plays your flight (or the load the pit file describes)",
            "until a panel or control misses its limit less the margin, healthy or with any one node dead.",
            "Says the number first, then what limits it, how sure that is, and what a change would buy.",
            "With --plan it says where each panel should go, on which segment and at which baud rate, and what to",
            "buy for it; only a plan that passed when it was played is offered."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline size pit.yaml flight.dlr",
            "  dropline size pit.yaml flight.dlr --segment front --add Altimeter",
            "  dropline size pit.yaml flight.dlr --baud 115200,250000,500000 --margin 10%%",
            "  dropline size bus.yaml                       the load described in the pit file",
            "  dropline size pit.yaml flight.dlr --plan --write planned.yaml",
            "",
            "Exit codes:  0 fit, or a plan that passes   1 not   2 the input is wrong   3 our own fault"
        })
final class SizeCommand implements Callable<Integer> {
    private static final long LOAD_NANOS = 600_000_000_000L;
    private static final List<Integer> USUAL_BAUDS =
            List.of(9_600, 19_200, 38_400, 57_600, 115_200, 250_000, 500_000, 1_000_000);

    private final Console console;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private Played played;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private SegmentChoice segment;

    @Option(
            names = "--add",
            paramLabel = "PANEL|PRESET",
            description = "What to add: copies of this panel, or a panel with just this kind of indicator ('dropline"
                    + " presets'). Several are taken in turn. Default: the segment's own panels in turn.")
    private List<String> adding = new ArrayList<>();

    @Option(
            names = "--baud",
            paramLabel = "LIST",
            split = ",",
            description = "Baud rates to compare, with commas between. Default: 9600 to 1000000 in the usual steps.")
    private List<String> bauds = new ArrayList<>();

    @Option(
            names = "--margin",
            paramLabel = "PERCENT",
            description = "What must be left of every limit. Default: 20%%, common practice, because one more panel"
                    + " always comes.")
    private String margin = "20%";

    @Option(names = "--seeds", paramLabel = "N", description = "How many seeds to try. Default: 20.")
    private int seeds = 20;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private PlanOptions plan;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private JsonOutput json;

    @Option(names = "--html", paramLabel = "FILE", description = "Write the report: one file, readable offline.")
    private @Nullable Path html;

    @Mixin
    final Debug debug = new Debug();

    SizeCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws IOException {
        double share = margin();
        if (seeds < 1 || seeds > 1000) {
            throw played.usage("--seeds must be 1 to 1000, not " + seeds);
        }
        if (plan.isOnlyHalfAsked()) {
            throw played.usage("--write and --same-segments belong to --plan");
        }
        plan.mustNotOverwrite();
        PitFile.Understood understood = played.read(html, json.file(), plan.write());
        Pit pit = understood.pit();
        if (plan.isAsked()) {
            return plan(understood, share);
        }
        int index = segment.in(pit);
        Trials.Stretch stretch = stretch(understood);
        SizePlan plan = new SizePlan(
                Version.number(),
                played.name(),
                pit,
                index,
                new Additions(understood, index).boards(adding),
                bauds(pit.segments().get(index)),
                share,
                played.seed(),
                seeds,
                List.of(Limits.values()));
        SizeResult result = run(plan, stretch, understood);
        result.losses().forEach(loss -> console.err().println("dropline: " + loss));
        if (html != null) {
            OutputFiles.write(html, SizePage.of(result));
        }
        json.write(console, out -> SizeJson.write(result, out), SizeText.of(result));
        return result.fits() ? ExitCode.PASS : ExitCode.FAIL;
    }

    private int plan(PitFile.Understood understood, double share) throws IOException {
        if (segment.isNamed() || !adding.isEmpty()) {
            throw played.usage("--segment and --add size one segment; leave them out with --plan");
        }
        PlanRun run = new PlanRun(plan.asked(played, understood, rates(), share, seeds), understood);
        Planned planned = run.planned(stretch(understood));
        planned.result().losses().forEach(loss -> console.err().println("dropline: " + loss));
        if (html != null) {
            OutputFiles.write(html, PlanPage.html(planned.result()));
        }
        json.write(console, out -> PlanJson.write(planned.result(), out), PlanText.of(planned.result()));
        Path file = plan.write();
        if (file != null) {
            run.write(planned, played, file, stretch(understood));
            console.err().println("dropline: " + (planned.pit() == null ? "nothing was written to " : "wrote ") + file);
        }
        return planned.result().passes() ? ExitCode.PASS : ExitCode.FAIL;
    }

    private SizeResult run(SizePlan plan, Trials.Stretch stretch, PitFile.Understood understood) throws IOException {
        Progress progress = ProgressBar.on(console);
        try (Judging judging = new Judging(Session.threads())) {
            return new Sizing(plan, stretch, understood.figures(), judging).run(progress);
        } catch (StoppedRunException stopped) {
            throw new WrongInput("dropline: " + stopped.getMessage(), stopped);
        } finally {
            ProgressBar.end(progress);
        }
    }

    private double margin() {
        String digits = margin.strip();
        digits = digits.endsWith("%") ? digits.substring(0, digits.length() - 1).strip() : digits;
        double percent;
        try {
            percent = Double.parseDouble(digits);
        } catch (NumberFormatException e) {
            throw played.usage("--margin '" + margin + "' is no percentage; write it as in 20%");
        }
        if (!(percent >= 0 && percent < 100)) {
            throw played.usage("--margin must be 0% or more and below 100%, not " + margin);
        }
        return percent / 100;
    }

    private List<Integer> bauds(Segment sized) {
        TreeSet<Integer> rates = new TreeSet<>(rates());
        rates.add(sized.baud());
        return List.copyOf(rates);
    }

    /** Those asked for, else the usual ones. */
    private List<Integer> rates() {
        TreeSet<Integer> rates = new TreeSet<>(bauds.isEmpty() ? USUAL_BAUDS : List.of());
        for (String text : bauds) {
            int rate;
            try {
                rate = Integer.parseInt(text.strip());
            } catch (NumberFormatException e) {
                throw played.usage("--baud '" + text + "' is no whole number of bits a second");
            }
            if (rate < 300 || rate > 4_000_000) {
                throw played.usage("--baud must be 300 to 4000000, not " + rate);
            }
            rates.add(rate);
        }
        return List.copyOf(rates);
    }

    private Trials.Stretch stretch(PitFile.Understood understood) {
        RecordingFiles files = played.recording();
        if (files != null) {
            return (from, until) -> played.stretch(understood, files, from, until);
        }
        if (understood.pit().load() == null) {
            throw played.usage("a recording is missing; or write a load into the pit file (load: every, changes)");
        }
        return (from, until) -> played.load(understood, (until == PitFeed.TO_THE_END ? LOAD_NANOS : until) - from);
    }
}
