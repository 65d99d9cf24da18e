package dropline.harness.fault;

import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Signal;

/**
 * What a fault strikes, by the numbers of {@link Fault}.
 *
 * @param segment index of the segment; -1 for the host
 * @param node index of the node; -1 where it strikes none
 * @param part index of the indicator's first slot, or of the control; -1 for neither
 */
record Struck(int segment, int node, int part) {
    /** The host: every segment. */
    static final Struck HOST = new Struck(-1, -1, -1);

    static Struck of(Fault fault) {
        return new Struck(fault.segment(), fault.node(), fault.part());
    }

    Segment segment(Pit pit) {
        return pit.segments().get(segment);
    }

    Node node(Layout layout) {
        return layout.nodes().get(node).node();
    }

    /** The signal of a moving indicator. */
    Signal signal(Pit pit, Layout layout) {
        return pit.signals().get(layout.slots().get(part).signal());
    }

    /** How a person names it; empty for the host. */
    String name(FaultKind kind, Pit pit, Layout layout) {
        return switch (kind.strikes()) {
            case HOST -> "";
            case SEGMENT -> segment(pit).name();
            case NODE, NODE_AND_OTHER -> node(layout).name();
            case INDICATOR -> {
                Layout.Slot slot = layout.slots().get(part);
                yield slot.panel().name() + "/" + slot.indicator().name();
            }
            case CONTROL -> layout.controls().get(part).control().name();
        };
    }
}
