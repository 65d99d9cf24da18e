package dropline.harness.pitfile;

import dropline.bus.pit.Cable;
import dropline.bus.pit.Cable.Topology;
import dropline.bus.pit.Fitted;
import dropline.bus.pit.Fitting;
import dropline.bus.pit.Hub;
import dropline.bus.pit.Wire;
import dropline.harness.firmware.FirmwareFile;
import dropline.harness.yaml.Tree;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Makes hubs, cables and what one needs to know to wire a node, from groups without problems. */
final class CableBuilder {
    private final Parts parts;

    CableBuilder(Parts parts) {
        this.parts = parts;
    }

    Hub hub(Block block) {
        List<Block> segments = parts.root().blocks(BusKeys.SEGMENTS);
        List<Integer> ports = new ArrayList<>();
        for (int s = 0; s < segments.size(); s++) {
            Optional<String> name = segments.get(s)
                    .block(BusKeys.CONTROLLER)
                    .flatMap(c -> c.written(BusKeys.CONTROLLER_HUB))
                    .map(Tree.Scalar::text);
            if (name.equals(Optional.of(block.name()))) {
                ports.add(s);
            }
        }
        return new Hub(block.name(), block.value(BusKeys.HUB_KIND), block.value(BusKeys.TURN), ports);
    }

    Cable cable(Block segment) {
        List<Block> nodes = parts.nodesOn(segment);
        Topology topology = segment.value(BusKeys.TOPOLOGY);
        Wire wire = PairBuilder.wire(segment);
        Fitted fitted =
                PairBuilder.fitted(segment, nodes.stream().map(Block::name).toList());
        List<Integer> stops = stops(segment, nodes);
        if (topology != Topology.STAR) {
            if (!stops.contains(Cable.CONTROLLER)) {
                stops.add(0, Cable.CONTROLLER);
            }
            return new Cable(topology, List.of(new Cable.Arm("", stops)), wire, fitted);
        }
        Map<String, List<Integer>> arms = new LinkedHashMap<>();
        for (int stop : stops) {
            arms.computeIfAbsent(nodes.get(stop).value(NodeKeys.ARM), name -> new ArrayList<>())
                    .add(stop);
        }
        return new Cable(
                topology,
                arms.entrySet().stream()
                        .map(arm -> new Cable.Arm(arm.getKey(), arm.getValue()))
                        .toList(),
                wire,
                fitted);
    }

    /** Positions of nodes in the order along the cable; without a stated order, that of the file. */
    private static List<Integer> stops(Block segment, List<Block> nodes) {
        List<String> names = nodes.stream().map(Block::name).toList();
        List<String> order = segment.written(BusKeys.ORDER)
                .map(written -> written.stream().map(Tree.Scalar::text).toList())
                .orElse(names);
        List<Integer> stops = new ArrayList<>();
        order.forEach(name -> stops.add(names.indexOf(name)));
        return stops;
    }

    Fitting fitting(Block node) {
        Block board = node.blockOrEmpty(NodeKeys.BOARD);
        return new Fitting(
                likeOf(board),
                node.get(NodeKeys.SUPPLY).map(Tree.Scalar::text).orElse(""),
                node.get(NodeKeys.CONNECTOR).orElse(""),
                firmware(node.blockOrEmpty(ProgramKeys.FIRMWARE)),
                node.get(NodeKeys.PASSPORT).orElse(""),
                PowerBuilder.draw(board, NodeKeys.DRAWS),
                PairBuilder.load(node.blockOrEmpty(NodeKeys.TRANSCEIVER)),
                PowerBuilder.inlet(node, board),
                PairBuilder.reach(node));
    }

    /** What runs on it in words: as it is called, else the file that is flashed. */
    private static String firmware(Block block) {
        return block.get(ProgramKeys.NAME)
                .or(() -> block.written(ProgramKeys.IMAGE).map(FirmwareFile.Raw::shortName))
                .orElse("");
    }

    private static String likeOf(Block block) {
        return block.written(BusKeys.LIKE).map(Tree.Scalar::text).orElse("");
    }
}
