package dropline.harness.survive;

import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.harness.fault.FaultText;
import dropline.harness.fault.Injection;
import dropline.harness.fault.SingleFaults;
import dropline.harness.measure.PanelLimit;
import dropline.harness.measure.PanelRecovery;
import dropline.harness.measure.RecoveryMeasure;
import dropline.harness.replay.Progress;
import dropline.harness.replay.Sweep;
import dropline.harness.verdict.InjectedFault;
import dropline.harness.verdict.Recording;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.stream.IntStream;

/** Runs a recording once without a fault, then with every single fault in turn. */
public final class Survive {
    private static final long SECOND = 1_000_000_000L;
    private static final double HEALTHY_SHARE = 0.01;

    private final Pit pit;
    private final Layout layout;
    private final Sweep sweep;
    private final Plan plan;

    /**
     * What is asked.
     *
     * @param droplineVersion the program's
     * @param recording name of what is played, for people
     * @param seed the runs'
     * @param kinds the kinds of fault, in the order in which they are told
     * @param atNanos when each begins, ns; empty for a third of the recording
     * @param forNanos how long each lasts, ns
     */
    public record Plan(
            String droplineVersion,
            String recording,
            long seed,
            List<FaultKind> kinds,
            OptionalLong atNanos,
            long forNanos) {
        public Plan {
            kinds = List.copyOf(kinds);
            if (forNanos <= 0) {
                throw new IllegalArgumentException("a fault must last: forNanos=" + forNanos);
            }
        }
    }

    /** {@code sweep} is of this pit and the plan's seed. */
    public Survive(Pit pit, Sweep sweep, Plan plan) {
        this.pit = pit;
        this.layout = Layout.of(pit);
        this.sweep = sweep;
        this.plan = plan;
    }

    /**
     * Runs all of it.
     *
     * @throws IOException if the recording cannot be read
     * @throws SurviveException if the faults do not fit into it
     */
    public Survival run(Progress progress) throws IOException {
        List<Case> healthy = new ArrayList<>();
        for (int segment : lanes()) {
            healthy.add(new Case(pit, layout, segment, List.of(), RecoveryMeasure.Span.WHOLE_RUN, budgets()));
        }
        Sweep.Swept swept = sweep.run(healthy, (reached, share) -> progress.reached(reached, HEALTHY_SHARE * share));
        long at = begin(swept.durationNanos());
        Map<String, PanelLimit> limits = limits(healthy);
        List<Fault> faults = new SingleFaults(pit, layout).all(plan.kinds(), at, plan.forNanos());
        List<List<Case>> cases = new ArrayList<>();
        for (Fault fault : faults) {
            cases.add(cases(fault, limits));
        }
        sweep.run(
                cases.stream().flatMap(List::stream).toList(),
                (reached, share) -> progress.reached(reached, HEALTHY_SHARE + (1 - HEALTHY_SHARE) * share));
        return new Survival(
                Survival.VERSION,
                plan.droplineVersion(),
                pit.name(),
                new Recording(plan.recording(), swept.durationNanos()),
                plan.seed(),
                at,
                plan.forNanos(),
                allowed(limits),
                outcomes(faults, cases, swept.durationNanos()),
                swept.losses());
    }

    /** A third of the recording in whole seconds, where it is long enough to have any. */
    private long begin(long durationNanos) {
        long third = durationNanos / 3;
        long at = plan.atNanos().orElse(third >= SECOND ? third / SECOND * SECOND : third);
        if (at + plan.forNanos() >= durationNanos) {
            throw new SurviveException("the faults begin at " + seconds(at) + " and last " + seconds(plan.forNanos())
                    + ", but the recording ends at " + seconds(durationNanos)
                    + ": nothing is left to recover in; give an earlier --at, a shorter --for, or a longer recording");
        }
        return at;
    }

    private static String seconds(long nanos) {
        return Math.round(nanos / 1e6) / 1e3 + " s";
    }

    private Map<String, PanelLimit> budgets() {
        Map<String, PanelLimit> budgets = new LinkedHashMap<>();
        layout.nodes()
                .forEach(place -> place.node()
                        .panels()
                        .forEach(panel -> budgets.put(panel.name(), PanelLimit.of(panel.budget()))));
        return budgets;
    }

    private static Map<String, PanelLimit> limits(List<Case> healthy) {
        Map<String, PanelLimit> limits = new LinkedHashMap<>();
        for (Case segment : healthy) {
            for (PanelRecovery panel : segment.panels()) {
                limits.put(
                        panel.panel().name(),
                        PanelLimit.of(panel.panel().budget()).orAsIn(panel));
            }
        }
        return limits;
    }

    /** Of the segments that run together, the first. */
    private List<Integer> lanes() {
        return IntStream.range(0, pit.segments().size())
                .filter(segment -> pit.runsWith(segment).get(0) == segment)
                .boxed()
                .toList();
    }

    /** The segment it strikes, with those that run with it; all of them for the host. */
    private List<Case> cases(Fault fault, Map<String, PanelLimit> limits) {
        RecoveryMeasure.Span span = new RecoveryMeasure.Span(fault.fromNanos(), SingleFaults.overNanos(fault));
        List<Case> cases = new ArrayList<>();
        for (int segment : lanes()) {
            if (fault.segment() < 0 || pit.runsWith(segment).contains(fault.segment())) {
                cases.add(new Case(pit, layout, segment, List.of(fault), span, limits));
            }
        }
        return cases;
    }

    private List<Survival.Allowed> allowed(Map<String, PanelLimit> limits) {
        List<Survival.Allowed> allowed = new ArrayList<>();
        for (Layout.NodePlace place : layout.nodes()) {
            for (Panel panel : place.node().panels()) {
                PanelLimit limit = limits.getOrDefault(panel.name(), PanelLimit.of(panel.budget()));
                allowed.add(new Survival.Allowed(
                        panel.name(),
                        pit.segments().get(place.segment()).name(),
                        panel.budget().updateNanos(),
                        limit.updateNanos(),
                        limit.controlNanos()));
            }
        }
        return allowed;
    }

    private List<FaultOutcome> outcomes(List<Fault> faults, List<List<Case>> cases, long endNanos) {
        List<InjectedFault> injected = Injection.of(faults, pit, endNanos);
        FaultText texts = new FaultText(pit, layout);
        List<FaultOutcome> outcomes = new ArrayList<>();
        for (int i = 0; i < faults.size(); i++) {
            List<PanelOutcome> panels = new ArrayList<>();
            for (Case ran : cases.get(i)) {
                ran.panels().forEach(panel -> panels.add(outcome(panel)));
            }
            outcomes.add(new FaultOutcome(injected.get(i), texts.target(faults.get(i)), panels));
        }
        return outcomes;
    }

    private PanelOutcome outcome(PanelRecovery panel) {
        boolean never = panel.lack() != PanelRecovery.Lack.NOTHING;
        PanelOutcome.State state = never
                ? PanelOutcome.State.NEVER
                : panel.touched() ? PanelOutcome.State.RECOVERED : PanelOutcome.State.UNTOUCHED;
        return new PanelOutcome(
                panel.panel().name(),
                layout.nodes().get(panel.node()).node().name(),
                state,
                panel.worstUpdateNanos(),
                panel.worstControlNanos(),
                never ? 0 : panel.recoveryNanos(),
                words(panel.lack()),
                panel.stoodWrong(),
                panel.moreLostSteps(),
                panel.spurious());
    }

    private static String words(PanelRecovery.Lack lack) {
        return switch (lack) {
            case NOTHING -> "";
            case WAITING -> "a change is not shown";
            case FORGOTTEN -> "a forgotten value is not sent again";
            case WRONG -> "a needle stands in the wrong place";
            case UNTOLD -> "the host does not know of a move";
        };
    }
}
