package dropline.harness.suite;

import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.trace.TraceSink;
import dropline.harness.fault.SingleFaults;
import dropline.harness.measure.KnownMeasure;
import dropline.harness.measure.PanelRecovery;
import dropline.harness.measure.RecoveryMeasure;
import dropline.harness.measure.SilenceMeasure;
import dropline.harness.replay.Beside;
import dropline.harness.replay.Both;
import dropline.harness.suite.Breach.Rule;
import dropline.harness.suite.RunOutcome.Judged;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/** What a run must hold beyond what its figures tell: watched while it runs, judged once it has ended. */
public final class Watch implements Beside {
    private final Pit pit;
    private final Layout layout;
    private final List<Fault> faults;
    private final Within within;
    private final List<KnownMeasure> known = new ArrayList<>();
    private final List<RecoveryMeasure> recovering = new ArrayList<>();
    private final List<SilenceMeasure> silent = new ArrayList<>();

    Watch(Pit pit, List<Fault> faults, Within within) {
        this.pit = pit;
        layout = Layout.of(pit);
        this.faults = faults;
        this.within = within;
    }

    @Override
    public TraceSink with(int segment, TraceSink measures) {
        TraceSink all = measures;
        if (within.known() != Within.ANY) {
            known.add(new KnownMeasure(layout, segment));
            all = new Both(all, known.get(known.size() - 1));
        }
        if (within.recovery() != Within.ANY
                && !faults.isEmpty()
                && faults.stream().noneMatch(SingleFaults::neverEnds)) {
            recovering.add(new RecoveryMeasure(pit, layout, segment, span(), Map.of()));
            all = new Both(all, recovering.get(recovering.size() - 1));
        }
        if (within.silence() != Within.ANY) {
            for (Fault fault : faults) {
                if (fault.kind() == FaultKind.SILENT_HOST) {
                    silent.add(new SilenceMeasure(
                            pit, layout, segment, fault.fromNanos(), fault.untilNanos(), within.silence()));
                    all = new Both(all, silent.get(silent.size() - 1));
                }
            }
        }
        return all;
    }

    /** From when the first of the faults strikes until the last is over. */
    private RecoveryMeasure.Span span() {
        long from = faults.stream().mapToLong(Fault::fromNanos).min().orElseThrow();
        long over = faults.stream().mapToLong(SingleFaults::overNanos).max().orElseThrow();
        return new RecoveryMeasure.Span(from, over);
    }

    /** How much there was to judge. */
    Judged judged() {
        int panels = recovering.isEmpty() && silent.isEmpty()
                ? 0
                : layout.nodes().stream()
                        .mapToInt(place -> place.node().panels().size())
                        .sum();
        long boards = known.stream()
                .mapToLong(segment -> IntStream.range(0, layout.nodes().size())
                        .filter(segment::hasControls)
                        .count())
                .sum();
        return new Judged(panels, 0, 0, (int) boards);
    }

    /** What did not hold, in the order of the rules. */
    List<Breach> breaches(String after) {
        List<Breach> breaches = new ArrayList<>();
        for (KnownMeasure segment : known) {
            for (int node = 0; node < layout.nodes().size(); node++) {
                if (segment.worstNanos(node) > within.known() || segment.unknownAtEnd(node)) {
                    breaches.add(new Breach(
                            Rule.KNOWN,
                            layout.nodes().get(node).node().name(),
                            segment.unknownAtEnd(node) ? Breach.NEVER : segment.worstNanos(node),
                            within.known(),
                            after));
                }
            }
        }
        for (RecoveryMeasure segment : recovering) {
            for (PanelRecovery panel : segment.panels()) {
                boolean never = panel.lack() != PanelRecovery.Lack.NOTHING;
                if (never || panel.recoveryNanos() > within.recovery()) {
                    breaches.add(new Breach(
                            Rule.RECOVERY,
                            panel.panel().name(),
                            never ? Breach.NEVER : panel.recoveryNanos(),
                            within.recovery(),
                            after));
                }
            }
        }
        for (SilenceMeasure segment : silent) {
            for (PanelRecovery panel : segment.wrong()) {
                boolean never = panel.lack() != PanelRecovery.Lack.NOTHING;
                breaches.add(new Breach(
                        Rule.SILENCE,
                        panel.panel().name(),
                        never ? Breach.NEVER : panel.worstUpdateNanos(),
                        within.silence(),
                        after));
            }
        }
        return breaches;
    }
}
