package dropline.bus.pit;

import java.util.ArrayList;
import java.util.List;

/**
 * The numbers under which the trace and the measures speak of a pit's parts, each a position in one of these lists, in
 * the order of the description.
 *
 * @param nodes every node
 * @param slots every (indicator, signal) pair: the places where a value is shown
 * @param controls every control
 */
public record Layout(List<NodePlace> nodes, List<Slot> slots, List<ControlPlace> controls) {

    /** A node and the index of its segment. */
    public record NodePlace(int segment, Node node) {}

    /**
     * A place where a signal is shown. {@code node} is an index into {@link Layout#nodes()}, {@code signal} into the
     * pit's signals.
     */
    public record Slot(int segment, int node, Panel panel, Indicator indicator, int signal) {}

    /** A control and the index of its segment and node. */
    public record ControlPlace(int segment, int node, Panel panel, Control control) {}

    public Layout {
        nodes = List.copyOf(nodes);
        slots = List.copyOf(slots);
        controls = List.copyOf(controls);
    }

    /** Numbers the parts of a pit. Planned panels count as if built. */
    public static Layout of(Pit pit) {
        List<NodePlace> nodes = new ArrayList<>();
        List<Slot> slots = new ArrayList<>();
        List<ControlPlace> controls = new ArrayList<>();
        for (int s = 0; s < pit.segments().size(); s++) {
            for (Node node : pit.segments().get(s).nodes()) {
                int n = nodes.size();
                nodes.add(new NodePlace(s, node));
                for (Panel panel : node.panels()) {
                    for (Indicator indicator : panel.indicators()) {
                        for (int signal : indicator.signals()) {
                            slots.add(new Slot(s, n, panel, indicator, signal));
                        }
                    }
                    for (Control control : panel.controls()) {
                        controls.add(new ControlPlace(s, n, panel, control));
                    }
                }
            }
        }
        return new Layout(nodes, slots, controls);
    }
}
