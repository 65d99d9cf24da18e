package dropline.harness.cli;

import dropline.harness.json.SuiteJson;
import dropline.harness.origin.Trials;
import dropline.harness.report.SuiteJUnit;
import dropline.harness.report.SuiteText;
import dropline.harness.suite.PlannedRun;
import dropline.harness.suite.RunOutcome;
import dropline.harness.suite.StepOutcome;
import dropline.harness.suite.Suite;
import dropline.harness.suite.SuiteFile;
import dropline.harness.suite.Watch;
import dropline.harness.verdict.Outcome;
import dropline.harness.verdict.ReplayResult;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code dropline check}: every run of a suite. */
@Command(
        name = "check",
        header = "Run every flight of a suite through your pit and say whether all still holds.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        parameterListHeading = "%n",
        optionListHeading = "%n",
        sortOptions = false,
        customSynopsis = {
            "dropline check SUITE [--accept | --why] [--live] [--jobs N] [--html FILE] [--junit FILE]",
            "               [--json FILE|-]"
        },
        descriptionHeading = "%n",
        description = {
            "A suite (docs/suite-file.md) names a pit, the flights to replay through it, with which seeds and",
            "faults, and what must hold. Says first how many runs hold, then, for each run and seed, what was",
            "checked and what broke. Repeat it after every change of the pit file. Once runs were accepted, it",
            "also says what is worse, better, new or gone beyond what chance explains (docs/baselines.md)."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline check my-pit/suite.yaml",
            "  dropline check my-pit/suite.yaml --accept",
            "  dropline check my-pit/suite.yaml --why",
            "",
            "Exit codes:  0 all hold, none is worse   1 not so, or not checked   2 the input is wrong",
            "             3 our own fault"
        })
final class CheckCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(index = "0", paramLabel = "SUITE", description = "The suite file (YAML).")
    @SuppressWarnings("NullAway.Init")
    private Path suite;

    @Option(
            names = "--accept",
            description = "Take what comes of it for good: repeat each run with 20 seeds and write the accepted runs"
                    + " beside the suite.")
    private boolean accept;

    @Option(
            names = "--why",
            description =
                    "Say what changed in the pit file since the accepted runs, and which of it makes things worse.")
    private boolean why;

    @Option(names = "--live", description = "Do the suite's live steps as well, for which hardware must be connected.")
    private boolean live;

    @Option(names = "--jobs", paramLabel = "N", description = "Runs side by side. Default: one for each processor.")
    private int jobs = Session.threads();

    @Option(names = "--junit", paramLabel = "FILE", description = "Write the verdicts as JUnit XML.")
    private @Nullable Path junit;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private JsonOutput json;

    @Mixin
    final Debug debug = new Debug();

    CheckCommand(Console console) {
        this.console = console;
    }

    /** A run with one seed: what became of it, and its figures. */
    private record Checked(RunOutcome outcome, Optional<BaselineCheck.Ran> ran) {}

    @Override
    public Integer call() throws IOException {
        InputFiles.mustExist(suite, "suite file");
        if (jobs < 1) {
            throw new WrongInput("dropline: --jobs must be at least 1, not " + jobs);
        }
        OutputFiles.mustBeWritable(junit, suite);
        OutputFiles.mustBeWritable(json.file(), suite);
        Suite understood = read();
        SuiteRuns runs = new SuiteRuns(console, jobs);
        List<SuiteRuns.Task> tasks = new ArrayList<>();
        for (PlannedRun run : understood.runs()) {
            tasks.addAll(SuiteRuns.Task.of(understood.pit().pit(), run, run.seeds()));
        }
        List<Checked> checked = runs.run(tasks, CheckCommand::checked);
        List<RunOutcome> outcomes = outcomes(checked);
        BaselineCheck baseline = new BaselineCheck(suite, understood, runs);
        List<StepOutcome> steps = steps(understood, baseline);
        BaselineCheck.Standings standings = accept
                ? new BaselineCheck.Standings("", List.of(), true)
                : baseline.compare(
                        checked.stream().flatMap(one -> one.ran().stream()).toList());
        String text =
                SuiteText.of(outcomes, steps, Trials.counted(understood.pit().figures())) + standings.text();
        if (accept) {
            text += "\n" + baseline.accept() + "\n";
        } else if (why) {
            text += baseline.why(standings.deviations());
        }
        if (junit != null) {
            OutputFiles.write(junit, SuiteJUnit.of(understood.name(), outcomes, steps, standings.deviations()));
        }
        json.write(
                console, out -> SuiteJson.write(understood.name(), outcomes, steps, standings.deviations(), out), text);
        boolean allHold = outcomes.stream().allMatch(outcome -> outcome.outcome() == Outcome.PASS)
                && steps.stream().allMatch(StepOutcome::holdsOrWasNotRun)
                && (!outcomes.isEmpty() || steps.stream().anyMatch(StepOutcome::holds));
        return allHold && standings.isWell() ? ExitCode.PASS : ExitCode.FAIL;
    }

    private List<StepOutcome> steps(Suite understood, BaselineCheck baseline) {
        List<StepOutcome> steps = new ArrayList<>();
        understood.rules().forEach(rule -> steps.add(rule.judge(understood.pit().pit())));
        LiveSteps hardware = new LiveSteps(console, understood.pitFile(), baseline.changedNodes());
        understood.live().forEach(step -> steps.add(live ? hardware.run(step) : LiveSteps.notAsked(step)));
        return steps;
    }

    private static Checked checked(SuiteRuns.Task task, ReplayResult result, Watch watch) {
        PlannedRun run = task.run();
        return new Checked(
                run.holds().judge(run.name(), result, watch, task.turn().after()),
                run.isFollowed() ? Optional.of(BaselineCheck.Ran.of(task, result)) : Optional.empty());
    }

    /** One for each run and seed: what was tried in turn belongs together. */
    private static List<RunOutcome> outcomes(List<Checked> checked) {
        Map<String, RunOutcome> outcomes = new LinkedHashMap<>();
        for (Checked one : checked) {
            outcomes.merge(one.outcome().seed() + " " + one.outcome().run(), one.outcome(), RunOutcome::and);
        }
        return List.copyOf(outcomes.values());
    }

    private Suite read() throws IOException {
        SuiteFile.Result result = SuiteFile.read(suite);
        if (result instanceof SuiteFile.Understood understood) {
            return understood.suite();
        }
        if (result instanceof SuiteFile.Wrong wrong) {
            throw PitFiles.wrong(wrong.problems());
        }
        throw new AssertionError(result);
    }
}
