package dropline.harness.survive;

import dropline.harness.survive.PanelOutcome.State;
import dropline.harness.verdict.Recording;
import java.util.List;

/**
 * What a pit survives.
 *
 * @param version of this document, {@link #VERSION}
 * @param droplineVersion the program's
 * @param pit the pit's name
 * @param recording what was replayed
 * @param seed the runs' seed
 * @param atNanos when each fault began, ns
 * @param forNanos how long each lasted, ns
 * @param panels how late each panel may be, in the order of the pit
 * @param faults every fault, kind by kind
 * @param losses what of the recording was left out, a sentence each
 */
public record Survival(
        int version,
        String droplineVersion,
        String pit,
        Recording recording,
        long seed,
        long atNanos,
        long forNanos,
        List<Allowed> panels,
        List<FaultOutcome> faults,
        List<String> losses) {

    /** The version of this document. A new figure leaves it; one that goes or changes its meaning raises it. */
    public static final int VERSION = 1;

    /**
     * How late a panel may be: its budget, or a quarter more than what it takes without a fault where that is longer.
     *
     * @param panel its name
     * @param segment its segment's name
     * @param updateBudgetNanos its budget, ns
     * @param updateLimitNanos what it is held to, ns
     * @param controlLimitNanos what its controls are held to, ns
     */
    public record Allowed(
            String panel, String segment, long updateBudgetNanos, long updateLimitNanos, long controlLimitNanos) {}

    public Survival {
        panels = List.copyOf(panels);
        faults = List.copyOf(faults);
        losses = List.copyOf(losses);
    }

    /** Whether everything recovers. */
    public boolean survives() {
        return faults.stream().noneMatch(fault -> fault.state() == State.NEVER);
    }
}
