package dropline.harness.verdict;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Program;
import dropline.harness.measure.ControlMeasure;
import dropline.harness.measure.PanelMeasure;
import dropline.harness.measure.SegmentMeasures;
import dropline.harness.measure.SlotMeasure;
import dropline.harness.measure.Times;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * Makes a {@link ReplayResult} of a run's measures. Every panel and control is judged on its slowest latency against
 * its budget; planned panels count as if built.
 */
public final class Verdicts {
    private static final Comparator<Verdict> WORST_FIRST = Comparator.comparing((Verdict verdict) ->
                    List.of(Outcome.FAIL, Outcome.PASS, Outcome.UNDECIDED).indexOf(verdict.outcome()))
            .thenComparing(Verdict::marginNanos);

    private final Pit pit;
    private final Layout layout;

    /** {@code layout} is the pit's. */
    public Verdicts(Pit pit, Layout layout) {
        this.pit = pit;
        this.layout = layout;
    }

    /** The verdicts on one run; {@code segments} are the measures of the pit's segments in their order, each ended. */
    public ReplayResult of(Run run, List<SegmentMeasures> segments) {
        return of(run, segments, List.of());
    }

    /** The same, beside what becomes of it with each of these nodes dead. */
    public ReplayResult of(Run run, List<SegmentMeasures> segments, List<DeadNode> deadNodes) {
        Judge judge = new Judge(pit, layout, run.seed(), new AtWorsts(pit, layout, segments));
        List<PanelResult> panels = new ArrayList<>();
        List<ControlResult> controls = new ArrayList<>();
        List<SegmentResult> results = new ArrayList<>();
        Times times = new Times();
        for (SegmentMeasures measures : segments) {
            results.add(judge.segment(measures));
            for (PanelMeasure panel : measures.panels()) {
                panels.add(judge.panel(panel));
                for (SlotMeasure slot : panel.slots()) {
                    times.addAll(slot.latency());
                }
            }
            for (ControlMeasure control : measures.controls()) {
                controls.add(judge.control(control));
            }
        }
        panels.sort(Comparator.comparing(PanelResult::verdict, WORST_FIRST));
        controls.sort(Comparator.comparing(ControlResult::verdict, WORST_FIRST));
        List<SingleFailure> failures = failures(judge, deadNodes, panels, results);
        Latency latency = Figures.latency(times);
        return new ReplayResult(
                ReplayResult.VERSION,
                run.droplineVersion(),
                pit.name(),
                run.recording(),
                run.seed(),
                String.format(Locale.ROOT, "%016x", run.digest()),
                run.faults(),
                outcome(panels, controls),
                new Sentences(panels, controls, results, failures).all(latency),
                run.findings(),
                new Adviser(pit, layout).advise(panels, controls, results, segments),
                caveats(run, panels),
                budgetSources(),
                latency,
                panels,
                controls,
                results,
                failures,
                null);
    }

    private static Outcome outcome(List<PanelResult> panels, List<ControlResult> controls) {
        List<Outcome> outcomes = new ArrayList<>();
        panels.forEach(panel -> outcomes.add(panel.verdict().outcome()));
        controls.forEach(control -> outcomes.add(control.verdict().outcome()));
        return together(outcomes);
    }

    /** Nothing judged at all is undecided; else what could not be judged does not count. */
    private static Outcome together(List<Outcome> outcomes) {
        return outcomes.stream()
                .filter(outcome -> outcome != Outcome.UNDECIDED)
                .reduce(Outcome::and)
                .orElse(Outcome.UNDECIDED);
    }

    private List<SingleFailure> failures(
            Judge judge, List<DeadNode> deadNodes, List<PanelResult> healthy, List<SegmentResult> segments) {
        Map<String, PanelResult> byName = new LinkedHashMap<>();
        healthy.forEach(panel -> byName.put(panel.panel(), panel));
        List<SingleFailure> failures = new ArrayList<>();
        for (DeadNode dead : deadNodes) {
            SegmentResult before = segments.get(dead.segment());
            failures.add(failure(judge, dead, byName, before));
        }
        return failures;
    }

    private SingleFailure failure(
            Judge judge, DeadNode dead, Map<String, PanelResult> healthy, SegmentResult segmentBefore) {
        List<String> silent = new ArrayList<>();
        for (Panel panel : layout.nodes().get(dead.node()).node().panels()) {
            silent.add(panel.name());
        }
        List<SingleFailure.PanelThen> then = new ArrayList<>();
        for (PanelMeasure measure : panels(dead)) {
            if (measure.node() != dead.node()) {
                PanelResult panel = judge.panel(measure);
                PanelResult before = Objects.requireNonNull(healthy.get(panel.panel()));
                then.add(new SingleFailure.PanelThen(
                        panel.panel(), panel.verdict(), before.verdict(), panel.updateLatency()));
            }
        }
        then.sort(Comparator.comparing(SingleFailure.PanelThen::verdict, WORST_FIRST));
        return new SingleFailure(
                layout.nodes().get(dead.node()).node().name(),
                segmentBefore.segment(),
                together(then.stream().map(panel -> panel.verdict().outcome()).toList()),
                silent,
                dead.own().bus().cycles().meanNanos(),
                segmentBefore.pollCycle().meanNanos(),
                then);
    }

    private static List<PanelMeasure> panels(DeadNode dead) {
        return dead.measures().stream()
                .flatMap(segment -> segment.panels().stream())
                .toList();
    }

    /** Whose own program was run. */
    private Optional<String> programs() {
        List<String> run = new ArrayList<>();
        for (Layout.NodePlace place : layout.nodes()) {
            Program program = place.node().program();
            if (program != null) {
                run.add(place.node().name() + " (" + program.image().shortName() + ")");
            }
        }
        return run.isEmpty()
                ? Optional.empty()
                : Optional.of("Run instruction by instruction on an emulated chip, whatever the profile says: "
                        + String.join(", ", run)
                        + ". What their displays and motors then take is modelled.");
    }

    private List<String> caveats(Run run, List<PanelResult> results) {
        List<String> caveats = new ArrayList<>();
        if (!run.isObserved()) {
            caveats.add("Nodes, wire and panels are modelled from the pit file; nothing was measured on a real board.");
            programs().ifPresent(caveats::add);
        }
        long planned = panels().stream()
                .filter(panel -> panel.status() == Panel.Status.PLANNED)
                .count();
        if (planned > 0) {
            caveats.add(
                    Words.count(planned, "planned panel") + (planned == 1 ? " counts" : " count") + " as if built.");
        }
        caveats.add("One run with seed " + run.seed() + " over "
                + Words.time(run.recording().durationNanos()) + ": a slower moment than the slowest seen may exist.");
        caveats.addAll(AtWorstWords.caveats(results));
        caveats.addAll(run.caveats());
        return caveats;
    }

    private List<String> budgetSources() {
        Set<String> sources = new LinkedHashSet<>();
        panels().forEach(panel -> sources.add(panel.budget().source()));
        return List.copyOf(sources);
    }

    private List<Panel> panels() {
        List<Panel> panels = new ArrayList<>();
        layout.nodes().forEach(place -> panels.addAll(place.node().panels()));
        return panels;
    }
}
