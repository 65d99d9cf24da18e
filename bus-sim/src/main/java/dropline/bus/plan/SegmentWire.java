package dropline.bus.plan;

import dropline.bus.pit.Control;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.protocol.NodeWire;
import dropline.protocol.NodeWire.ControlWire;
import dropline.protocol.NodeWire.SignalWire;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;

/** The nodes of a segment as its protocol sees them. */
public final class SegmentWire {
    private SegmentWire() {}

    /** Indices into the pit's signals of what a node shows, ascending by number on the wire. */
    public static List<Integer> signals(Pit pit, Node node) {
        TreeSet<Integer> shown = new TreeSet<>();
        for (Panel panel : node.panels()) {
            for (Indicator indicator : panel.indicators()) {
                shown.addAll(indicator.signals());
            }
        }
        return shown.stream()
                .sorted(Comparator.comparingInt(s -> number(pit, node, s)))
                .toList();
    }

    /** The number of a signal on the way to a node: its register where the node names one, else its own number. */
    public static int number(Pit pit, Node node, int signal) {
        for (Node.Register register : node.registers()) {
            if (register.signal() == signal) {
                return register.address();
            }
        }
        return pit.signals().get(signal).number();
    }

    /** One node. */
    public static NodeWire of(Pit pit, Node node) {
        List<SignalWire> signals = signals(pit, node).stream()
                .map(s -> new SignalWire(
                        number(pit, node, s), pit.signals().get(s).valueBytes()))
                .toList();
        List<ControlWire> controls = node.panels().stream()
                .flatMap(panel -> panel.controls().stream())
                .map(Control::number)
                .sorted()
                .map(ControlWire::new)
                .toList();
        return new NodeWire(node.address(), signals, controls, node.profile().firmware());
    }

    /** Indices into the pit's signals of what any node of a segment shows, ascending by the signals' own numbers. */
    public static List<Integer> signals(Pit pit, Segment segment) {
        TreeSet<Integer> shown = new TreeSet<>();
        segment.nodes().forEach(node -> shown.addAll(signals(pit, node)));
        return shown.stream()
                .sorted(Comparator.comparingInt(s -> pit.signals().get(s).number()))
                .toList();
    }

    /** All nodes, as a broadcast sees them. */
    public static NodeWire all(Pit pit, Segment segment) {
        List<SignalWire> signals = signals(pit, segment).stream()
                .map(s -> pit.signals().get(s))
                .map(s -> new SignalWire(s.number(), s.valueBytes()))
                .toList();
        return new NodeWire(0, signals, List.of());
    }
}
