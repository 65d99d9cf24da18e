package dropline.harness.cli;

import dropline.harness.baseline.Accepted;
import dropline.harness.baseline.AcceptedFile;
import dropline.harness.baseline.AcceptedRun;
import dropline.harness.baseline.Checkup.Explained;
import dropline.harness.baseline.Checkup.Reasons;
import dropline.harness.baseline.Checkup.Standings;
import dropline.harness.baseline.Comparison;
import dropline.harness.baseline.Deviation;
import dropline.harness.baseline.Deviation.Standing;
import dropline.harness.baseline.Figure;
import dropline.harness.baseline.PitChange;
import dropline.harness.baseline.Tracked;
import dropline.harness.baseline.Why;
import dropline.harness.pitfile.PitFile;
import dropline.harness.suite.PlannedRun;
import dropline.harness.suite.Suite;
import dropline.harness.verdict.ReplayResult;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.TextFile;
import dropline.harness.yaml.Tree;
import dropline.harness.yaml.TreeReader;
import dropline.harness.yaml.TreeText;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/** A suite and its accepted runs, which lie beside it. */
final class BaselineCheck {
    /** So many runs tell how far chance reaches. */
    private static final int SEEDS = 20;

    /** Seeds beyond those that the suite names. */
    private static final long FURTHER_SEEDS = 1_001;

    /** Enough to tell what a change does, once it is known to do something. */
    private static final int SEEDS_OF_A_TRIAL = 2;

    private static final int MOST_EXPLAINED = 3;

    private final Path file;
    private final Suite suite;
    private final SuiteRuns runs;

    /** @param file the suite's */
    BaselineCheck(Path file, Suite suite, SuiteRuns runs) {
        this.file = file;
        this.suite = suite;
        this.runs = runs;
    }

    /**
     * A run with one seed, as far as a baseline needs it.
     *
     * @param digest of its trace
     */
    record Ran(String run, long seed, String digest, Tracked figures) {
        static Ran of(SuiteRuns.Task task, ReplayResult result) {
            return new Ran(task.run().name(), result.seed(), result.digest(), Tracked.of(result));
        }
    }

    // --- accept

    /** Runs every run with enough seeds and writes what came of it; says so in a sentence. */
    String accept() throws IOException {
        Map<String, AcceptedRun> accepted = new LinkedHashMap<>();
        for (PlannedRun run : suite.followed()) {
            List<Ran> ran = runs.run(
                    SuiteRuns.Task.of(suite.pit().pit(), run, seeds(run)),
                    (task, result, watch) -> Ran.of(task, result));
            accepted.put(
                    run.name(),
                    AcceptedRun.of(
                            run.played(),
                            run.content(),
                            ran.get(0).seed(),
                            ran.get(0).digest(),
                            ran.stream().map(Ran::figures).toList()));
        }
        Path figures = AcceptedFile.beside(file);
        Path pit = AcceptedFile.pitBeside(file);
        OutputFiles.write(
                pit,
                "# The pit file as it was when the runs of " + file.getFileName() + " were accepted, with all it"
                        + " includes; for 'dropline check --why'.\n"
                        + TreeText.of(suite.pit().tree().joined()));
        OutputFiles.write(figures, AcceptedFile.text(new Accepted(suite.name(), Version.number(), SEEDS, accepted)));
        return "Accepted, each run with " + SEEDS + " seeds: wrote " + figures + " and " + pit + ".";
    }

    private static List<Long> seeds(PlannedRun run) {
        List<Long> seeds = new ArrayList<>(run.seeds());
        for (long further = FURTHER_SEEDS; seeds.size() < SEEDS; further++) {
            if (!seeds.contains(further)) {
                seeds.add(further);
            }
        }
        return seeds.subList(0, SEEDS);
    }

    // --- compare

    /** Holds runs against the accepted ones, where there are any. */
    Standings compare(List<Ran> ran) throws IOException {
        if (!Files.exists(AcceptedFile.beside(file))) {
            return Standings.NONE;
        }
        Accepted accepted = accepted();
        Comparison comparison = new Comparison(accepted);
        List<Deviation> deviations = new ArrayList<>();
        List<String> notes = new ArrayList<>();
        boolean comparable = true;
        for (PlannedRun run : suite.followed()) {
            AcceptedRun before = accepted.runs().get(run.name());
            if (before == null) {
                notes.add("Run " + run.name() + " is new: accept it with dropline check --accept.");
            } else if (!before.content().equals(run.content())) {
                notes.add("What run " + run.name() + " plays, or what goes wrong in it, has changed since: it cannot be"
                        + " compared; look at it, then accept it anew.");
                comparable = false;
            } else {
                deviations.addAll(comparison.of(run.name(), figures(ran, run.name())));
                program(accepted, before, run, ran).ifPresent(notes::add);
            }
        }
        for (String name : accepted.runs().keySet()) {
            if (suite.followed().stream().noneMatch(run -> run.name().equals(name))) {
                notes.add("Run " + name + " was accepted and is gone.");
                comparable = false;
            }
        }
        return new Standings(true, notes, deviations, comparable);
    }

    private static List<Tracked> figures(List<Ran> ran, String run) {
        return ran.stream()
                .filter(one -> one.run().equals(run))
                .map(Ran::figures)
                .toList();
    }

    /** That not the pit but the program has changed, where the same inputs give another trace. */
    private Optional<String> program(Accepted accepted, AcceptedRun before, PlannedRun run, List<Ran> ran) {
        boolean other = ran.stream()
                .anyMatch(one -> one.run().equals(run.name())
                        && one.seed() == before.seed()
                        && !one.digest().equals(before.digest()));
        return other && changes().filter(List::isEmpty).isPresent()
                ? Optional.of("Run " + run.name() + ": pit and recording are as they were, and yet the trace differs:"
                        + " Dropline " + Version.number() + " computes other results than " + accepted.droplineVersion()
                        + " did. Look at what differs, then accept it anew.")
                : Optional.empty();
    }

    private Accepted accepted() {
        AcceptedFile.Result result = AcceptedFile.read(AcceptedFile.beside(file));
        if (result instanceof AcceptedFile.Wrong wrong) {
            throw PitFiles.wrong(wrong.problems());
        }
        return ((AcceptedFile.Understood) result).accepted();
    }

    private Optional<Tree.Mapping> pitThen() {
        Report report = new Report();
        Path path = AcceptedFile.pitBeside(file);
        return Files.exists(path)
                ? TextFile.read(path, "a pit file", report)
                        .flatMap(text -> TreeReader.read(path.toString(), text, report))
                        .filter(Tree.Mapping.class::isInstance)
                        .map(Tree.Mapping.class::cast)
                : Optional.empty();
    }

    /** The boards whose description has changed since the runs were accepted; empty where none were. */
    Optional<List<String>> changedNodes() {
        Set<String> all = new LinkedHashSet<>();
        suite.pit().pit().segments().forEach(segment -> segment.nodes().forEach(node -> all.add(node.name())));
        return changes()
                .map(changes -> changes.stream()
                        .flatMap(change -> change.path().stream())
                        .filter(all::contains)
                        .distinct()
                        .toList());
    }

    private Optional<List<PitChange>> changes() {
        return pitThen().map(then -> PitChange.between(then, suite.pit().tree().joined()));
    }

    // --- why

    /** What changed in the pit file since then, and what of it is behind the worst that came of it. */
    Reasons why(List<Deviation> deviations) throws IOException {
        Optional<Tree.Mapping> then = pitThen();
        if (then.isEmpty()) {
            throw new WrongInput("dropline: " + AcceptedFile.pitBeside(file)
                    + " is missing: it says what the pit was; accept the suite anew");
        }
        List<PitChange> changes =
                PitChange.between(then.get(), suite.pit().tree().joined());
        List<Explained> explained = new ArrayList<>();
        Map<String, Optional<List<Tracked>>> known = new HashMap<>();
        for (Deviation deviation : worst(deviations)) {
            Why why = new Why(chosen -> trial(deviation, then.get(), chosen, known));
            explained.add(new Explained(deviation, why.among(changes)));
        }
        return new Reasons(changes, explained);
    }

    /** What is worst of each run. */
    private static List<Deviation> worst(List<Deviation> deviations) {
        Map<String, Deviation> worst = new LinkedHashMap<>();
        for (Deviation deviation : deviations) {
            if (deviation.standing() == Standing.WORSE) {
                worst.merge(
                        deviation.run(), deviation, (one, other) -> one.strength() >= other.strength() ? one : other);
            }
        }
        return worst.values().stream().limit(MOST_EXPLAINED).toList();
    }

    private Optional<Double> trial(
            Deviation deviation, Tree.Mapping then, List<PitChange> changes, Map<String, Optional<List<Tracked>>> known)
            throws IOException {
        String key = deviation.run() + changes;
        if (!known.containsKey(key)) {
            known.put(key, tracked(deviation.run(), PitChange.applied(then, changes)));
        }
        Figure figure = Objects.requireNonNull(deviation.figure(), "only a figure can be worse");
        Optional<List<Tracked>> ran = Objects.requireNonNull(known.get(key));
        if (ran.isEmpty()) {
            return Optional.empty();
        }
        double sum = 0;
        for (Tracked one : ran.get()) {
            Optional<Double> value = one.figure(deviation.subject(), figure);
            if (value.isEmpty()) {
                return Optional.empty();
            }
            sum += value.get();
        }
        return Optional.of(sum / ran.get().size());
    }

    private Optional<List<Tracked>> tracked(String name, Tree.Mapping tree) throws IOException {
        PlannedRun run = suite.followed().stream()
                .filter(one -> one.name().equals(name))
                .findFirst()
                .orElseThrow();
        if (!(suite.pit().tree().as(tree) instanceof PitFile.Understood pit)) {
            return Optional.empty();
        }
        Optional<PlannedRun> there = run.through(pit);
        if (there.isEmpty()) {
            return Optional.empty();
        }
        List<Long> seeds = seeds(run).subList(0, SEEDS_OF_A_TRIAL);
        return Optional.of(runs.run(
                SuiteRuns.Task.of(pit.pit(), there.get(), seeds), (task, result, watch) -> Tracked.of(result)));
    }
}
