package dropline.harness.fault;

import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.harness.pitfile.Measure;

/** Writes a fault as a text that reads back as the same fault, with everything that was left out filled in. */
public final class FaultText {
    private final Pit pit;
    private final Layout layout;
    private final Amounts amounts;

    /** {@code layout} is the pit's. */
    public FaultText(Pit pit, Layout layout) {
        this.pit = pit;
        this.layout = layout;
        this.amounts = new Amounts(pit, layout);
    }

    /** The whole text: {@code dead-node oil-board at 60 s for 30 s}. */
    public String of(Fault fault) {
        StringBuilder text = new StringBuilder(what(fault));
        if (fault.fromNanos() > 0) {
            text.append(" at ").append(Measure.time().write(fault.fromNanos()));
        }
        if (spans(fault)) {
            text.append(" for ").append(Measure.time().write(fault.untilNanos() - fault.fromNanos()));
        }
        if (fault.rate() > 0) {
            text.append(" rate ").append(Rates.written(fault.kind(), fault.rate()));
        }
        if (fault.amount() != 0) {
            text.append(" by ").append(amounts.written(fault.kind(), Struck.of(fault), fault.amount()));
        }
        return text.toString();
    }

    /** What goes wrong with what, without times and amounts: {@code duplicate-address oil-board as fuel-board}. */
    public String what(Fault fault) {
        String target = target(fault);
        String other = other(fault);
        return fault.kind().word()
                + (target.isEmpty() ? "" : " " + Token.written(target))
                + (other.isEmpty() ? "" : " as " + Token.written(other));
    }

    /** The name of what it strikes, {@code PANEL/INDICATOR} for an indicator; empty for the host. */
    public String target(Fault fault) {
        return Struck.of(fault).name(fault.kind(), pit, layout);
    }

    /** The name of the node whose address it answers to; empty for none. */
    public String other(Fault fault) {
        return fault.other() < 0 ? "" : layout.nodes().get(fault.other()).node().name();
    }

    /** What strikes once has a begin and no span. */
    private static boolean spans(Fault fault) {
        boolean once = fault.kind().timing() == FaultKind.Timing.EVENT && fault.rate() == 0;
        return fault.untilNanos() != Fault.TO_THE_END && !once;
    }
}
