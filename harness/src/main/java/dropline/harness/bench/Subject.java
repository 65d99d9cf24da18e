package dropline.harness.bench;

import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.plan.SegmentWire;
import dropline.protocol.NodeWire;
import java.util.List;

/**
 * Who is examined, and among whom it is to live.
 *
 * @param pit the pit it belongs to
 * @param segment index into {@link Pit#segments()}
 * @param node index into the segment's nodes
 */
public record Subject(Pit pit, int segment, int node) {

    Segment on() {
        return pit.segments().get(segment);
    }

    /** The node as the pit describes it. */
    public Node described() {
        return on().nodes().get(node);
    }

    /** Its name. */
    public String name() {
        return described().name();
    }

    NodeWire wire() {
        return SegmentWire.of(pit, described());
    }

    /** All nodes of its segment as the protocol sees them. */
    List<NodeWire> all() {
        return on().nodes().stream().map(each -> SegmentWire.of(pit, each)).toList();
    }

    /** Those nodes but itself. */
    List<NodeWire> others() {
        return all().stream().filter(each -> each.address() != wire().address()).toList();
    }

    /** An address on which nobody of the segment is. */
    int freeAddress() {
        int free = 1;
        while (taken(free)) {
            free++;
        }
        return free;
    }

    private boolean taken(int address) {
        return on().nodes().stream().anyMatch(each -> each.address() == address);
    }
}
