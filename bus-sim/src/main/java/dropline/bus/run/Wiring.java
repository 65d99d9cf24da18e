package dropline.bus.run;

import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.protocol.NodeWire;
import dropline.protocol.NodeWire.ControlWire;
import dropline.protocol.NodeWire.SignalWire;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;

/**
 * Who is told what on one segment: which signals go to which destination, in the order of their numbers on the wire, and
 * where each is shown. Worked out once for a run.
 */
final class Wiring {
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
        nodes = mine.stream().mapToInt(Integer::intValue).toArray();
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
        TreeSet<Integer> shown = new TreeSet<>();
        for (Layout.Slot slot : layout.slots()) {
            if (slot.node() == node) {
                shown.add(slot.signal());
            }
        }
        Node described = layout.nodes().get(node).node();
        return byNumber(shown, described);
    }

    /** The pit's signals that any node of the segment shows, in the order of their numbers. */
    int[] signalsOfAll() {
        TreeSet<Integer> shown = new TreeSet<>();
        for (int node : nodes) {
            for (int signal : signalsOf(node)) {
                shown.add(signal);
            }
        }
        return shown.stream()
                .sorted(Comparator.comparingInt(s -> pit.signals().get(s).number()))
                .mapToInt(Integer::intValue)
                .toArray();
    }

    /** The controls of a node as the trace numbers them, in the order of their numbers on the wire. */
    int[] controlsOf(int node) {
        List<Integer> found = new ArrayList<>();
        for (int c = 0; c < layout.controls().size(); c++) {
            if (layout.controls().get(c).node() == node) {
                found.add(c);
            }
        }
        return found.stream()
                .sorted(Comparator.comparingInt(
                        c -> layout.controls().get(c).control().number()))
                .mapToInt(Integer::intValue)
                .toArray();
    }

    /** For each of a destination's signals, a node's places where it is shown. */
    int[][] slotsOf(int node, int[] signals) {
        int[][] slots = new int[signals.length][];
        for (int i = 0; i < signals.length; i++) {
            List<Integer> found = new ArrayList<>();
            for (int s = 0; s < layout.slots().size(); s++) {
                Layout.Slot slot = layout.slots().get(s);
                if (slot.node() == node && slot.signal() == signals[i]) {
                    found.add(s);
                }
            }
            slots[i] = found.stream().mapToInt(Integer::intValue).toArray();
        }
        return slots;
    }

    /** A node as the protocol sees it. */
    NodeWire wireOf(int node) {
        Node described = layout.nodes().get(node).node();
        List<SignalWire> signals = new ArrayList<>();
        for (int signal : signalsOf(node)) {
            signals.add(new SignalWire(
                    number(signal, described), pit.signals().get(signal).valueBytes()));
        }
        List<ControlWire> controls = new ArrayList<>();
        for (int control : controlsOf(node)) {
            controls.add(new ControlWire(layout.controls().get(control).control().number()));
        }
        return new NodeWire(described.address(), signals, controls);
    }

    /** All nodes as the protocol sees them. */
    NodeWire wireOfAll() {
        List<SignalWire> signals = new ArrayList<>();
        for (int signal : signalsOfAll()) {
            signals.add(new SignalWire(
                    pit.signals().get(signal).number(), pit.signals().get(signal).valueBytes()));
        }
        return new NodeWire(0, signals, List.of());
    }

    private int[] byNumber(TreeSet<Integer> signals, Node node) {
        return signals.stream()
                .sorted(Comparator.comparingInt(s -> number(s, node)))
                .mapToInt(Integer::intValue)
                .toArray();
    }

    private int number(int signal, Node node) {
        for (Node.Register register : node.registers()) {
            if (register.signal() == signal) {
                return register.address();
            }
        }
        return pit.signals().get(signal).number();
    }
}
