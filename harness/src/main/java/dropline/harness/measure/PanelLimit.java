package dropline.harness.measure;

import dropline.bus.pit.Budget;

/**
 * How late a panel may be before it counts as suffering from a fault: its budget, or a quarter more than what it took
 * without a fault where that is longer. Any disturbance shifts the phases of polls and refreshes for the rest of a run,
 * and another phase may take a little longer than those seen without it.
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

    /** The same, or a quarter more than what a panel took in a run without a fault. */
    public PanelLimit orAsIn(PanelRecovery healthy) {
        return new PanelLimit(
                Math.max(updateNanos, aQuarterMore(healthy.worstUpdateNanos())),
                Math.max(controlNanos, aQuarterMore(healthy.worstControlNanos())),
                Math.max(lostSteps, healthy.lostSteps()));
    }

    private static long aQuarterMore(long nanos) {
        return nanos + nanos / 4;
    }
}
