package dropline.harness.suite;

import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.harness.fault.SingleFaults;
import dropline.harness.pitfile.PitFile;
import dropline.harness.problem.Problem;
import dropline.harness.recording.PitFeed;
import dropline.harness.recording.RecordingException;
import dropline.harness.replay.RunLimit;
import dropline.harness.replay.Source;
import dropline.harness.yaml.FileSort;
import dropline.harness.yaml.Group;
import dropline.harness.yaml.KeyCode;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import dropline.harness.yaml.YamlCode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Stream;

/**
 * Makes a suite of a tree. Reads the pit and looks into every recording, so that all that is wrong is said before
 * anything runs.
 */
final class SuiteReader {
    private static final String LIVE = "names of live steps, each with its keys indented below it";
    private static final String RUNS = "names of runs, each with its keys indented below it";

    private final Path file;
    private final Report report;

    /** @param file where the suite lies: its paths count from its folder */
    SuiteReader(Path file, Report report) {
        this.file = file;
        this.report = report;
    }

    /** The suite, or empty with the reasons reported. */
    Optional<Suite> read(Tree tree) throws IOException {
        if (FileSort.SUITE.isAnother(tree, report)) {
            return Optional.empty();
        }
        if (!(tree instanceof Tree.Mapping mapping)) {
            report.at(tree, "", KeyCode.WRONG_TYPE, "keys: suite, pit, runs, and perhaps holds and live", null);
            return Optional.empty();
        }
        Group root = new Group(mapping, SuiteKeys.SUITE, "a suite", SuiteFile.PAGE, report);
        Optional<Tree.Scalar> name = root.needText("suite", "a name for the suite");
        Optional<Path> pitFile =
                root.needText("pit", "the path of the pit file").flatMap(path -> existing(path, "pit", "pit file"));
        Optional<PitFile.Understood> pit = pitFile.flatMap(this::pit);
        HoldsKeys common = HoldsKeys.ofSuite(root, report);
        Optional<Tree> live = root.get("live");
        Optional<Tree> runs = live.isPresent() ? root.get("runs") : root.need("runs", RUNS);
        root.nothingElse();
        List<PlannedRun> planned = new ArrayList<>();
        if (runs.isPresent()) {
            for (Tree.Entry entry : entries(runs.get(), "runs", RUNS)) {
                run(entry, common, pit).ifPresent(planned::add);
            }
        }
        List<LiveStep> steps = new ArrayList<>();
        if (live.isPresent()) {
            for (Tree.Entry entry : entries(live.get(), "live", LIVE)) {
                step(entry, pit).ifPresent(steps::add);
            }
        }
        return name.isEmpty() || pit.isEmpty()
                ? Optional.empty()
                : Optional.of(new Suite(
                        name.get().text(), pitFile.orElseThrow(), pit.get(), rules(common, pit.get()), steps, planned));
    }

    private List<PitRule> rules(HoldsKeys common, PitFile.Understood pit) {
        List<PitRule> rules = Stream.of(PitRule.values())
                .filter(rule -> common.wants(rule.key()))
                .toList();
        if (rules.contains(PitRule.SUPPLY) && pit.pit().supplies().isEmpty()) {
            report.at(
                    common.where(PitRule.SUPPLY.key()).orElseThrow(),
                    PitRule.SUPPLY.key(),
                    SuiteCode.NOT_JUDGEABLE,
                    "a pit that describes its supplies",
                    "write supplies: into the pit file (docs/power.md), or delete the key");
        }
        return rules;
    }

    private List<Tree.Entry> entries(Tree named, String key, String expected) {
        if (!(named instanceof Tree.Mapping mapping) || mapping.entries().isEmpty()) {
            report.at(named, key, KeyCode.WRONG_TYPE, expected, null);
            return List.of();
        }
        Group group = new Group(mapping, key, SuiteFile.PAGE, report);
        return mapping.once().entries().stream()
                .filter(entry -> group.has(entry.key().text()))
                .toList();
    }

    private Optional<LiveStep> step(Tree.Entry entry, Optional<PitFile.Understood> pit) {
        String name = entry.key().text();
        if (!(entry.value() instanceof Tree.Mapping mapping)) {
            report.at(entry.value(), name, KeyCode.WRONG_TYPE, "keys of a live step: roll-call, drive or bench", null);
            return Optional.empty();
        }
        return new LiveKeys(mapping, report, path -> existing(path, "recording", "recording"))
                .read(name, pit.map(PitFile.Understood::pit));
    }

    private Optional<PitFile.Understood> pit(Path path) {
        PitFile.Result result = PitFile.read(path);
        if (result instanceof PitFile.Wrong wrong) {
            wrong.problems().forEach(report::add);
        }
        return result instanceof PitFile.Understood understood ? Optional.of(understood) : Optional.empty();
    }

    /** The run as far as it is understood; what is not is reported. Without a pit it is only looked at. */
    private Optional<PlannedRun> run(Tree.Entry entry, HoldsKeys common, Optional<PitFile.Understood> pit)
            throws IOException {
        String name = entry.key().text();
        if (!(entry.value() instanceof Tree.Mapping mapping)) {
            report.at(entry.value(), name, KeyCode.WRONG_TYPE, "keys of a run: recording or for, and what else", null);
            return Optional.empty();
        }
        Group group = new Group(mapping, SuiteKeys.RUN, "a run", SuiteFile.PAGE, report);
        RunKeys keys = new RunKeys(group, report);
        Optional<Played> played = played(group, keys);
        List<Long> seeds = keys.seeds();
        List<Tree.Scalar> texts = keys.faults();
        Optional<Tree.Scalar> inTurn =
                group.text(StatedFault.IN_TURN, "a fault without its target, such as reset at 20s");
        HoldsKeys holds = HoldsKeys.ofRun(group, common, report);
        group.nothingElse();
        if (pit.isEmpty() || played.isEmpty()) {
            return Optional.empty();
        }
        if (played.get() instanceof Played.Load && pit.get().pit().load() == null) {
            String fix = "give a recording, or write a load into the pit file (load: every, changes)";
            group.problem(group.get("for").orElseThrow(), "for", SuiteCode.NO_LOAD, "a pit that describes a load", fix);
            return Optional.empty();
        }
        Source.Opening opening = played.get().opening(pit.get());
        List<StatedFault> faults = new ArrayList<>();
        OptionalLong length = length(opening);
        for (Tree.Scalar text : texts) {
            StatedFault.Read read = StatedFault.read(text, pit.get().pit(), length);
            faults.addAll(read.faults());
            read.problems().forEach(report::add);
        }
        List<StatedFault> turns = new ArrayList<>();
        if (inTurn.isPresent()) {
            StatedFault.Read read = StatedFault.inTurn(inTurn.get(), pit.get().pit(), length);
            turns.addAll(read.faults());
            read.problems().forEach(report::add);
            if (read.faults().isEmpty() && read.problems().isEmpty()) {
                String expected = "a fault that can strike something in this pit";
                report.at(inTurn.get(), StatedFault.IN_TURN, SuiteCode.STRIKES_NOTHING, expected, "delete the key");
            }
        }
        List<StatedFault> all = new ArrayList<>(faults);
        all.addAll(turns);
        judgeable(holds, all.stream().map(StatedFault::fault).toList());
        boolean healthy = texts.isEmpty() && inTurn.isEmpty();
        return Optional.of(
                new PlannedRun(name, played.get(), opening, seeds, faults, turns, holds.withDefaults(healthy)));
    }

    /** What a run itself asks for must be possible in it; what the whole suite asks for is where it is. */
    private void judgeable(HoldsKeys holds, List<Fault> faults) {
        holds.where("silence")
                .filter(at -> faults.stream().noneMatch(fault -> fault.kind() == FaultKind.SILENT_HOST))
                .ifPresent(at -> report.at(
                        at,
                        "silence",
                        SuiteCode.NOT_JUDGEABLE,
                        "a run in which the host falls silent",
                        "add faults: [\"silent-host at 10s for 5s\"], or delete the key"));
        holds.where("recovery")
                .filter(at -> faults.isEmpty() || faults.stream().anyMatch(SingleFaults::neverEnds))
                .ifPresent(at -> report.at(
                        at,
                        "recovery",
                        SuiteCode.NOT_JUDGEABLE,
                        "a run with faults that all end before it does",
                        "add faults:, say for how long each lasts (for 5s), or delete the key"));
    }

    /** How long a run can be, ns, where that can be known before it. What is wrong with a recording is reported. */
    private OptionalLong length(Source.Opening opening) throws IOException {
        try (Source source = opening.open()) {
            return source.mostNanos();
        } catch (RecordingException wrong) {
            for (Problem problem : wrong.problems()) {
                report.add(problem);
            }
            return OptionalLong.empty();
        }
    }

    private Optional<Played> played(Group group, RunKeys keys) {
        if (group.has("for")) {
            boolean alone = true;
            for (String other : List.of("recording", "from", "to")) {
                Optional<Tree> at = group.get(other);
                if (at.isPresent()) {
                    alone = false;
                    String fix = "for: runs the load the pit describes; delete what you do not mean";
                    group.problem(at.get(), other, SuiteCode.CONFLICT, "a recording or for:, not both", fix);
                }
            }
            Optional<Long> nanos = keys.nanos("for", 1, RunLimit.USUAL.longestNanos());
            return alone ? nanos.map(Played.Load::new) : Optional.empty();
        }
        long from = keys.nanos("from", 0, Long.MAX_VALUE).orElse(0L);
        Optional<Long> to = keys.nanos("to", 1, Long.MAX_VALUE);
        if (to.isPresent() && to.get() <= from) {
            group.problem(group.get("to").orElseThrow(), "to", KeyCode.OUT_OF_RANGE, "a time after from", null);
            to = Optional.empty();
        }
        long end = to.orElse(PitFeed.TO_THE_END);
        return group.needText("recording", "the path of a recording; or for: 60 s, for the load the pit describes")
                .flatMap(path -> existing(path, "recording", "recording")
                        .map(found -> new Played.Recorded(path.text(), found, from, end)));
    }

    private Optional<Path> existing(Tree.Scalar asked, String key, String what) {
        try {
            Path path = file.resolveSibling(asked.text());
            if (Files.isRegularFile(path) && Files.isReadable(path)) {
                return Optional.of(path);
            }
        } catch (InvalidPathException e) {
            report.at(asked, key, KeyCode.WRONG_TYPE, "the path of a " + what, e.getReason());
            return Optional.empty();
        }
        String fix = "check the path; it counts from the folder of the suite";
        report.at(asked, key, YamlCode.NO_SUCH_FILE, "the path of a " + what, fix);
        return Optional.empty();
    }
}
