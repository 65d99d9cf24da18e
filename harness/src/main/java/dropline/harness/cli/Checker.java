package dropline.harness.cli;

import dropline.harness.baseline.Checkup;
import dropline.harness.baseline.Checkup.Standings;
import dropline.harness.baseline.Tracked;
import dropline.harness.origin.Trials;
import dropline.harness.suite.PlannedRun;
import dropline.harness.suite.RunOutcome;
import dropline.harness.suite.StepOutcome;
import dropline.harness.suite.Suite;
import dropline.harness.suite.SuiteFile;
import dropline.harness.suite.Watch;
import dropline.harness.verdict.ReplayResult;
import dropline.harness.yaml.TreeText;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/** Checks a suite. Keeps what became of each run, so that a second look runs again only what has changed since. */
final class Checker {
    private final Console console;
    private final Path file;
    private final SuiteRuns runs;
    private final boolean live;
    private Map<String, List<Checked>> known = new HashMap<>();

    /**
     * @param file the suite's
     * @param live whether live steps are done
     */
    Checker(Console console, Path file, int jobs, boolean live) {
        this.console = console;
        this.file = file;
        this.live = live;
        runs = new SuiteRuns(console, jobs);
    }

    /** A run with one seed and one fault of those in turn: what became of it, and its figures if they are followed. */
    private record Checked(RunOutcome outcome, Optional<BaselineCheck.Ran> ran) {}

    /**
     * What a look found.
     *
     * @param suite as it was read
     * @param figures of every run that is followed, a seed each
     * @param ranAgain the names of the runs that were not the same as the last time
     */
    record Look(Suite suite, Checkup checkup, Map<String, List<Tracked>> figures, List<String> ranAgain) {}

    /** The suite's baseline. */
    BaselineCheck baseline(Suite suite) {
        return new BaselineCheck(file, suite, runs);
    }

    /** Reads the suite; every problem of it, its pit and its recordings is told. */
    Suite read() throws IOException {
        SuiteFile.Result result = SuiteFile.read(file);
        if (result instanceof SuiteFile.Understood understood) {
            return understood.suite();
        }
        if (result instanceof SuiteFile.Wrong wrong) {
            throw PitFiles.wrong(wrong.problems());
        }
        throw new AssertionError(result);
    }

    /** @param compared whether runs are held against the accepted ones */
    Look look(Suite suite, boolean compared) throws IOException {
        Map<String, List<Checked>> now = new LinkedHashMap<>();
        Map<String, PlannedRun> missing = new LinkedHashMap<>();
        String pit = TreeText.of(suite.pit().tree().joined());
        for (PlannedRun run : suite.runs()) {
            String key = key(run, pit);
            List<Checked> before = known.get(key);
            now.put(key, before == null ? List.of() : before);
            if (before == null) {
                missing.put(key, run);
            }
        }
        List<SuiteRuns.Task> tasks = new ArrayList<>();
        missing.values()
                .forEach(run -> tasks.addAll(SuiteRuns.Task.of(suite.pit().pit(), run, run.seeds())));
        List<Checked> fresh = runs.run(tasks, Checker::checked);
        missing.forEach((key, run) -> now.put(
                key,
                fresh.stream()
                        .filter(one -> one.outcome().run().equals(run.name()))
                        .toList()));
        known = now;
        List<Checked> all = now.values().stream().flatMap(List::stream).toList();
        List<BaselineCheck.Ran> ran =
                all.stream().flatMap(one -> one.ran().stream()).toList();
        BaselineCheck baseline = baseline(suite);
        Standings standings = compared ? baseline.compare(ran) : Standings.NONE;
        Checkup checkup = new Checkup(
                suite.name(),
                outcomes(all),
                steps(suite, baseline),
                standings,
                Trials.counted(suite.pit().figures()));
        return new Look(
                suite,
                checkup,
                figures(ran),
                missing.values().stream().map(PlannedRun::name).toList());
    }

    /** Equal where a run would come to the same. */
    private static String key(PlannedRun run, String pit) throws IOException {
        return run.name() + '\n' + run.content() + run.seeds() + run.holds() + Integer.toHexString(pit.hashCode());
    }

    private List<StepOutcome> steps(Suite suite, BaselineCheck baseline) {
        List<StepOutcome> steps = new ArrayList<>();
        suite.rules().forEach(rule -> steps.add(rule.judge(suite.pit().pit())));
        LiveSteps hardware = new LiveSteps(console, suite.pitFile(), baseline.changedNodes());
        suite.live().forEach(step -> steps.add(live ? hardware.run(step) : LiveSteps.notAsked(step)));
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

    private static Map<String, List<Tracked>> figures(List<BaselineCheck.Ran> ran) {
        Map<String, List<Tracked>> figures = new LinkedHashMap<>();
        for (BaselineCheck.Ran one : ran) {
            Objects.requireNonNull(figures.computeIfAbsent(one.run(), none -> new ArrayList<>()))
                    .add(one.figures());
        }
        return figures;
    }
}
