package dropline.harness.pitfile;

import dropline.bus.pit.Cable.Topology;
import dropline.bus.pit.Hub;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Checks of hubs and cables: what hangs where, in which order, and what no pair can have. */
final class CableChecks {
    /** In an order, the place of the controller. */
    static final String CONTROLLER = "controller";

    private final Parts parts;
    private final Report report;

    CableChecks(Parts parts, Report report) {
        this.parts = parts;
        this.report = report;
    }

    void check() {
        parts.root().blocks(BusKeys.HUBS).forEach(this::turn);
        sharedHubs();
        for (Block segment : parts.root().blocks(BusKeys.SEGMENTS)) {
            Optional<Topology> topology = segment.get(BusKeys.TOPOLOGY);
            topology.ifPresent(shape -> {
                List<Block> nodes = parts.nodesOn(segment);
                arms(segment, shape, nodes);
                if (shape == Topology.DIRECT) {
                    straight(segment, nodes);
                } else {
                    order(segment, shape, nodes);
                }
            });
        }
    }

    private void turn(Block hub) {
        boolean board =
                hub.get(BusKeys.HUB_KIND).filter(k -> k == Hub.Kind.BOARD).isPresent();
        if (hub.has(BusKeys.TURN) && hub.get(BusKeys.HUB_KIND).isPresent() && !board) {
            String expected = "no turn: unless the hub is a board, which runs a program";
            report.at(hub.at(BusKeys.TURN), "turn", PitCode.UNUSED_KEY, expected, "delete turn:, or write kind: board");
        }
    }

    /** What does not poll by itself carries one conversation only. */
    private void sharedHubs() {
        Map<String, Block> first = new LinkedHashMap<>();
        for (Block segment : parts.root().blocks(BusKeys.SEGMENTS)) {
            Optional<Tree.Scalar> name =
                    segment.block(BusKeys.CONTROLLER).flatMap(c -> c.written(BusKeys.CONTROLLER_HUB));
            Optional<Hub.Kind> kind = name.flatMap(n -> parts.hub(n.text())).flatMap(hub -> hub.get(BusKeys.HUB_KIND));
            if (name.isEmpty() || kind.isEmpty() || kind.get() == Hub.Kind.BOARD) {
                continue;
            }
            Block earlier = first.putIfAbsent(name.get().text(), segment);
            if (earlier != null) {
                boolean splitter = kind.get() == Hub.Kind.SPLITTER;
                String expected = "one segment on this hub: "
                        + (splitter ? "a splitter joins all its ports to one pair" : "its ports carry one conversation")
                        + ", and segment " + earlier.name() + " is on it ("
                        + earlier.nameAt().line(name.get()) + ")";
                String fix = "make them one segment with topology: star, each port an arm; or write kind: board for "
                        + name.get().text() + " if it polls by itself";
                report.at(name.get(), "hub", PitCode.HUB_SHARED, expected, fix);
            }
        }
    }

    private void arms(Block segment, Topology shape, List<Block> nodes) {
        for (Block node : nodes) {
            if (shape == Topology.STAR && !node.has(NodeKeys.ARM)) {
                String expected = "arm: the arm of the star it is on, since segment " + segment.name() + " is one ("
                        + segment.at(BusKeys.TOPOLOGY).line(node.nameAt()) + ")";
                report.at(node.nameAt(), "arm", PitCode.MISSING_KEY, node.name() + " without arm", expected, null);
            } else if (shape != Topology.STAR && node.has(NodeKeys.ARM)) {
                String expected = "no arm: unless its segment is a star";
                String fix = "delete arm:, or write topology: star for segment " + segment.name();
                report.at(node.at(NodeKeys.ARM), "arm", PitCode.UNUSED_KEY, expected, fix);
            }
        }
    }

    /** A board straight on USB: one, polled by the host, and nothing on it that belongs to a pair. */
    private void straight(Block segment, List<Block> nodes) {
        if (nodes.size() > 1) {
            Block second = nodes.get(1);
            String expected = "one node on segment " + segment.name() + ", which is direct ("
                    + segment.at(BusKeys.TOPOLOGY).line(second.nameAt()) + "); "
                    + nodes.get(0).name() + " is on it";
            String fix = "give each board on a USB lead of its own a segment of its own";
            report.at(second.at(NodeKeys.NODE_SEGMENT), "segment", PitCode.NOT_ALONE, expected, fix);
        }
        Optional<Block> controller = segment.block(BusKeys.CONTROLLER);
        if (controller.isPresent() && controller.get().has(BusKeys.CONTROLLER_HUB)) {
            String expected = "adapter: rather than hub:, since a direct segment hangs on the PC itself";
            String fix = "write adapter: native USB, or what serial converter the board carries";
            report.at(controller.get().at(BusKeys.CONTROLLER_HUB), "hub", PitCode.CONFLICT, expected, fix);
        }
        unused(segment, BusKeys.BIAS);
        unused(segment, BusKeys.ORDER);
        controller.ifPresent(c -> unused(c, BusKeys.CONTROLLER_LEAD));
        controller.ifPresent(c -> unused(c, BusKeys.CONTROLLER_TAIL));
    }

    private void unused(Block block, Key<?> key) {
        if (block.has(key)) {
            String expected = "no " + key.name() + ": with topology direct, where there is no pair";
            report.at(block.at(key), key.name(), PitCode.UNUSED_KEY, expected, "delete " + key.name() + ":");
        }
    }

    private void order(Block segment, Topology shape, List<Block> nodes) {
        List<Tree.Scalar> order = segment.written(BusKeys.ORDER).orElse(List.of());
        if (order.isEmpty()) {
            return;
        }
        Set<String> missing = new HashSet<>(nodes.stream().map(Block::name).toList());
        Set<String> seen = new HashSet<>();
        for (Tree.Scalar name : order) {
            boolean controller = name.text().equals(CONTROLLER) && !missing.contains(CONTROLLER);
            if (!seen.add(name.text())) {
                report.at(name, "order", PitCode.WRONG_ORDER, "each node once", "delete one of the two");
            } else if (controller && shape == Topology.STAR) {
                String expected = "nodes only: in a star the controller sits where the arms meet";
                report.at(name, "order", PitCode.WRONG_ORDER, expected, "delete it");
            } else if (parts.node(name.text()).isEmpty() && !controller) {
                report.unknownName(
                        name, "order", "a node", nodes.stream().map(Block::name).toList());
            } else if (!missing.remove(name.text()) && !controller) {
                String expected = "nodes of segment " + segment.name() + ": " + names(nodes);
                report.at(name, "order", PitCode.WRONG_ORDER, expected, "delete it, or move the node to this segment");
            }
        }
        List<String> left =
                nodes.stream().map(Block::name).filter(missing::contains).toList();
        if (!left.isEmpty() && left.size() < nodes.size()) {
            String expected = "every node of the segment; left out: " + Report.oneOf(left);
            report.at(segment.at(BusKeys.ORDER), "order", PitCode.WRONG_ORDER, expected, null);
        }
    }

    private static String names(List<Block> nodes) {
        return Report.oneOf(nodes.stream().map(Block::name).toList());
    }
}
