package dropline.bus.run;

import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.plan.SegmentWire;
import dropline.protocol.NodeWire;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Who is told what on one segment: which signals go to which destination, in the order of their numbers on the wire,
 * and where each is shown. Worked out once for a run.
 */
final class Wiring {
    private static final int[] NONE = {};

    private final Pit pit;
    private final Layout layout;
    private final Segment segment;
    private final int[] nodes;

    Wiring(Pit pit, Layout layout, int segmentIndex) {
        this.pit = pit;
        this.layout = layout;
        segment = pit.segments().get(segmentIndex);
        List<Integer> mine = new ArrayList<>();
        for (int i = 0; i < layout.nodes().size(); i++) {
            if (layout.nodes().get(i).segment() == segmentIndex) {
                mine.add(i);
            }
        }
        nodes = indices(mine);
    }

    /** The segment's nodes as the trace numbers them, in poll order. */
    int[] nodes() {
        return nodes;
    }

    boolean broadcasts() {
        return segment.controller().state() == StateDelivery.BROADCAST;
    }

    /** The pit's signals that a node shows, in the order of their numbers on the wire. */
    int[] signalsOf(int node) {
        return indices(SegmentWire.signals(pit, layout.nodes().get(node).node()));
    }

    /** The pit's signals that any node of the segment shows, in the order of their numbers. */
    int[] signalsOfAll() {
        return indices(SegmentWire.signals(pit, segment));
    }

    /** The controls of a node as the trace numbers them, in the order of their numbers on the wire. */
    int[] controlsOf(int node) {
        List<Integer> found = new ArrayList<>();
        for (int c = 0; c < layout.controls().size(); c++) {
            if (layout.controls().get(c).node() == node) {
                found.add(c);
            }
        }
        found.sort(
                Comparator.comparingInt(c -> layout.controls().get(c).control().number()));
        return indices(found);
    }

    /** For each of a destination's signals, a node's places where it is shown. */
    int[][] slotsOf(int node, int[] signals) {
        int[][] slots = new int[signals.length][];
        Arrays.fill(slots, NONE);
        for (int s = 0; s < layout.slots().size(); s++) {
            Layout.Slot slot = layout.slots().get(s);
            for (int i = 0; i < signals.length && slot.node() == node; i++) {
                if (slot.signal() == signals[i]) {
                    slots[i] = Arrays.copyOf(slots[i], slots[i].length + 1);
                    slots[i][slots[i].length - 1] = s;
                }
            }
        }
        return slots;
    }

    /** A node as the protocol sees it. */
    NodeWire wireOf(int node) {
        return SegmentWire.of(pit, layout.nodes().get(node).node());
    }

    /** All nodes as the protocol sees them. */
    NodeWire wireOfAll() {
        return SegmentWire.all(pit, segment);
    }

    private static int[] indices(List<Integer> found) {
        return found.stream().mapToInt(Integer::intValue).toArray();
    }
}
