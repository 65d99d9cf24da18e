package dropline.harness.fault;

import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.fault.FaultKind.Strikes;
import dropline.bus.fault.FaultKind.Timing;
import dropline.bus.fault.FaultKind.Unit;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/** Every single fault that a pit can have, each with its usual amount and rate. */
public final class SingleFaults {
    private final Pit pit;
    private final Layout layout;
    private final Strikable strikable;

    /** {@code layout} is the pit's. */
    public SingleFaults(Pit pit, Layout layout) {
        this.pit = pit;
        this.layout = layout;
        this.strikable = new Strikable(pit, layout);
    }

    /**
     * A fault of each kind on everything it can strike, kind by kind in the order given. A node that answers to
     * another's address answers to that of the next node of its segment.
     *
     * @param atNanos when each begins
     * @param forNanos how long each lasts; what strikes once does so at its begin
     */
    public List<Fault> all(Collection<FaultKind> kinds, long atNanos, long forNanos) {
        List<Fault> faults = new ArrayList<>();
        for (FaultKind kind : kinds) {
            for (Struck struck : strikable.all(kind)) {
                faults.add(new Fault(
                        kind,
                        struck.segment(),
                        struck.node(),
                        struck.part(),
                        kind.strikes() == Strikes.NODE_AND_OTHER ? next(struck) : -1,
                        atNanos,
                        atNanos + forNanos,
                        Usual.rate(kind),
                        Usual.amount(kind, struck, pit, layout)));
            }
        }
        return faults;
    }

    /** When a fault is over, ns: the end of its span, or what strikes once has lasted as long as its amount says. */
    public static long overNanos(Fault fault) {
        boolean once = fault.kind().timing() == Timing.EVENT && fault.rate() == 0;
        if (!once) {
            return fault.untilNanos();
        }
        return fault.kind().unit() == Unit.TIME ? fault.fromNanos() + fault.amount() : fault.fromNanos();
    }

    /** Whether a fault lasts as long as the run. */
    public static boolean neverEnds(Fault fault) {
        return overNanos(fault) == Fault.TO_THE_END;
    }

    private int next(Struck struck) {
        List<Struck> segment = strikable.candidates(FaultKind.DEAD_NODE).stream()
                .filter(node -> node.segment() == struck.segment())
                .toList();
        for (int i = 0; i < segment.size(); i++) {
            if (segment.get(i).node() == struck.node()) {
                return segment.get((i + 1) % segment.size()).node();
            }
        }
        throw new IllegalStateException("a node must be on its segment: node=" + struck.node());
    }
}
