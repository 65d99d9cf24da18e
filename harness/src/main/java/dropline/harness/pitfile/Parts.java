package dropline.harness.pitfile;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The parts of one pit file by name. */
final class Parts {
    private final Block root;
    private final Map<String, Block> signals;
    private final Map<String, Block> hubs;
    private final Map<String, Block> segments;
    private final Map<String, Block> nodes;
    private final List<String> signalOrder;

    Parts(Block root) {
        this.root = root;
        this.signals = byName(root.blocks(Schema.SIGNALS));
        this.hubs = byName(root.blocks(BusKeys.HUBS));
        this.segments = byName(root.blocks(BusKeys.SEGMENTS));
        this.nodes = byName(root.blocks(NodeKeys.NODES));
        this.signalOrder = List.copyOf(signals.keySet());
    }

    Block root() {
        return root;
    }

    Optional<Block> signal(String name) {
        return Optional.ofNullable(signals.get(name));
    }

    Optional<Block> hub(String name) {
        return Optional.ofNullable(hubs.get(name));
    }

    Optional<Block> segment(String name) {
        return Optional.ofNullable(segments.get(name));
    }

    Optional<Block> node(String name) {
        return Optional.ofNullable(nodes.get(name));
    }

    /** Position of a signal in the file. */
    int signalIndex(String name) {
        return signalOrder.indexOf(name);
    }

    Set<String> signalNames() {
        return signals.keySet();
    }

    Set<String> hubNames() {
        return hubs.keySet();
    }

    Set<String> segmentNames() {
        return segments.keySet();
    }

    Set<String> nodeNames() {
        return nodes.keySet();
    }

    /** The nodes on a segment, in the order of the file. */
    List<Block> nodesOn(Block segment) {
        return root.blocks(NodeKeys.NODES).stream()
                .filter(n -> n.written(NodeKeys.NODE_SEGMENT)
                        .map(s -> s.text().equals(segment.name()))
                        .orElse(false))
                .toList();
    }

    /** The panels a node carries, in the order of the file. */
    List<Block> panelsOn(Block node) {
        return root.blocks(PanelKeys.PANELS).stream()
                .filter(p -> p.written(PanelKeys.NODE)
                        .map(n -> n.text().equals(node.name()))
                        .orElse(false))
                .toList();
    }

    private static Map<String, Block> byName(List<Block> blocks) {
        Map<String, Block> byName = new LinkedHashMap<>();
        blocks.forEach(block -> byName.put(block.name(), block));
        return byName;
    }
}
