package dropline.harness.survive;

import dropline.harness.survive.PanelOutcome.State;
import dropline.harness.verdict.InjectedFault;
import java.util.Comparator;
import java.util.List;

/**
 * What became of the panels under one fault.
 *
 * @param fault what went wrong
 * @param target the name of what it struck; empty for the host
 * @param panels every panel of the segment it struck, in the order of the pit; all panels where it struck the host
 */
public record FaultOutcome(InjectedFault fault, String target, List<PanelOutcome> panels) {

    /** Who suffers most: whoever never recovers, then by recovery, then by latency. */
    static final Comparator<PanelOutcome> MOST_FIRST = Comparator.comparing(PanelOutcome::state)
            .thenComparingLong(PanelOutcome::recoveryNanos)
            .thenComparingLong(PanelOutcome::worstNanos)
            .reversed();

    public FaultOutcome {
        panels = List.copyOf(panels);
    }

    /** The worst state of any panel. */
    public State state() {
        return panels.stream()
                .map(PanelOutcome::state)
                .max(Comparator.naturalOrder())
                .orElse(State.UNTOUCHED);
    }

    /** The panels that felt it, those that suffer most first. */
    public List<PanelOutcome> touched() {
        return panels.stream()
                .filter(panel -> panel.state() != State.UNTOUCHED)
                .sorted(MOST_FIRST)
                .toList();
    }
}
