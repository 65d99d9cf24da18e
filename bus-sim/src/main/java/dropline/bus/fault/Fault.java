package dropline.bus.fault;

import dropline.bus.fault.FaultKind.Strikes;
import dropline.bus.fault.FaultKind.Timing;

/**
 * One fault that a run is given.
 *
 * @param kind what goes wrong
 * @param segment index into {@link dropline.bus.pit.Pit#segments()} of what it strikes; -1 for the host
 * @param node index into {@link dropline.bus.pit.Layout#nodes()}, or -1 where it strikes no node
 * @param part index into the layout's slots (the first of the indicator's) or controls, or -1
 * @param other index of the node whose address it answers to, or -1
 * @param fromNanos when its span begins, ns
 * @param untilNanos when its span ends, ns
 * @param rate as {@link Timing} says; 0 where there is none
 * @param amount as {@link FaultKind.Unit} says; 0 where there is none
 */
public record Fault(
        FaultKind kind,
        int segment,
        int node,
        int part,
        int other,
        long fromNanos,
        long untilNanos,
        double rate,
        long amount) {

    /** In place of an end: as long as the run. */
    public static final long TO_THE_END = Long.MAX_VALUE;

    public Fault {
        if (fromNanos < 0 || untilNanos <= fromNanos) {
            throw new IllegalArgumentException(
                    "a fault's span must not begin below 0 and must last: from=" + fromNanos + " until=" + untilNanos);
        }
        if (!(rate >= 0) || (kind.timing() == Timing.CHANCE && !(rate > 0 && rate <= 1))) {
            throw new IllegalArgumentException(
                    "a rate must not be negative, a chance lie above 0 up to 1: kind=" + kind + " rate=" + rate);
        }
        if ((node >= 0) != strikesNode(kind) || (other >= 0) != (kind.strikes() == Strikes.NODE_AND_OTHER)) {
            throw new IllegalArgumentException(
                    "a fault must name what it strikes: kind=" + kind + " node=" + node + " other=" + other);
        }
        if ((part >= 0) != (kind.strikes() == Strikes.INDICATOR || kind.strikes() == Strikes.CONTROL)) {
            throw new IllegalArgumentException("a fault must name the part it strikes: kind=" + kind + " part=" + part);
        }
    }

    /** A node that is dead from the begin to the end. */
    public static Fault deadNode(int segment, int node) {
        return new Fault(FaultKind.DEAD_NODE, segment, node, -1, -1, 0, TO_THE_END, 0, 0);
    }

    /** Whether an instant lies in its span. */
    public boolean spans(long atNanos) {
        return atNanos >= fromNanos && atNanos < untilNanos;
    }

    private static boolean strikesNode(FaultKind kind) {
        return kind.strikes() != Strikes.SEGMENT && kind.strikes() != Strikes.HOST;
    }
}
