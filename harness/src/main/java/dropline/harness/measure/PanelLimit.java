package dropline.harness.measure;

import dropline.bus.pit.Budget;

/**
 * How late a panel may be before it counts as suffering from a fault: its budget, or what it took without a fault where
 * that was longer.
 *
 * @param updateNanos slowest update latency, ns
 * @param controlNanos slowest control latency, ns
 * @param lostSteps steps of its controls that get lost anyway
 */
public record PanelLimit(long updateNanos, long controlNanos, long lostSteps) {

    /** The budget alone. */
    public static PanelLimit of(Budget budget) {
        return new PanelLimit(budget.updateNanos(), budget.controlNanos(), 0);
    }

    /** The same, or what a panel took in a run without a fault. */
    public PanelLimit orAsIn(PanelRecovery healthy) {
        return new PanelLimit(
                Math.max(updateNanos, healthy.worstUpdateNanos()),
                Math.max(controlNanos, healthy.worstControlNanos()),
                Math.max(lostSteps, healthy.lostSteps()));
    }
}
