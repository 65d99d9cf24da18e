package dropline.harness.size;

import dropline.bus.pit.Budget;
import dropline.bus.pit.Panel;
import dropline.harness.measure.ControlMeasure;
import dropline.harness.measure.PanelMeasure;
import dropline.harness.measure.SegmentMeasures;

/**
 * What every panel and control of a segment must keep.
 *
 * @param margin share of every budget that must be left
 * @param aside those of whom less is asked
 */
public record Demand(double margin, Aside aside) {

    /** Whether a run went to its end and everybody kept it. */
    public boolean isMetBy(Fare fare) {
        return fare.whole() && fare.keeps(margin);
    }

    /** The longest time of a run as a share of what it is allowed; infinite where something was lost. */
    double strain(Fare fare) {
        double strain = 0;
        for (Fared one : fare.each()) {
            double share = (double) one.worstNanos() / allowed(one.limitNanos(), one.whole() ? 0 : margin);
            strain = Math.max(strain, one.lost() > 0 ? Double.POSITIVE_INFINITY : share);
        }
        return strain;
    }

    /** Whether a run that is under way has missed it already. Looks at the longest times only, so it is quick. */
    boolean isMissedBy(SegmentMeasures measures, int dead) {
        for (PanelMeasure panel : measures.panels()) {
            if (panel.node() != dead
                    && panel.slots().stream().anyMatch(slot -> slot.latency().maxNanos() > panelLimit(panel.panel()))) {
                return true;
            }
        }
        for (ControlMeasure control : measures.controls()) {
            if (control.place().node() != dead && control.latency().maxNanos() > controlLimit(control)) {
                return true;
            }
        }
        return false;
    }

    private long panelLimit(Panel panel) {
        Budget budget = panel.budget();
        return limit(panel.name(), false, budget.updateNanos());
    }

    private long controlLimit(ControlMeasure control) {
        return limit(
                control.place().control().name(),
                true,
                control.place().panel().budget().controlNanos());
    }

    private long limit(String name, boolean control, long budgetNanos) {
        if (aside.isOut(name, control)) {
            return Long.MAX_VALUE;
        }
        return allowed(budgetNanos, aside.isWhole(name, control) ? 0 : margin);
    }

    /** What a margin leaves of a budget, ns. */
    static long allowed(long budgetNanos, double margin) {
        return Math.round(budgetNanos * (1 - margin));
    }
}
