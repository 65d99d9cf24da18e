package dropline.harness.wiring;

import dropline.bus.pit.Fitting;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.harness.report.TextTable;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What hangs on each supply branch, and what of its current is known. */
final class Supplies {
    private final Map<String, List<Node>> branches = new LinkedHashMap<>();

    Supplies(Pit pit) {
        for (Layout.NodePlace place : Layout.of(pit).nodes()) {
            branches.computeIfAbsent(place.node().fitting().supply(), branch -> new ArrayList<>())
                    .add(place.node());
        }
    }

    /** A row for each branch; boards on no stated branch come last. */
    String table() {
        TextTable table = new TextTable("supply branch", ">boards", ">known to draw", "not known");
        branches.forEach((branch, nodes) -> {
            if (!branch.isEmpty()) {
                row(table, branch, nodes);
            }
        });
        List<Node> unplaced = branches.get("");
        if (unplaced != null) {
            row(table, "(no branch stated)", unplaced);
        }
        return table.text();
    }

    private static void row(TextTable table, String branch, List<Node> nodes) {
        long known = nodes.stream().mapToLong(Supplies::knownMicroamps).sum();
        List<String> unknown = new ArrayList<>();
        nodes.forEach(node -> unknown.addAll(unknown(node)));
        table.row(
                branch,
                Integer.toString(nodes.size()),
                known == 0 && !unknown.isEmpty() ? "-" : Names.current(known),
                unknown.isEmpty() ? "" : unknown.size() + " of " + parts(nodes) + " figures, first " + unknown.get(0));
    }

    /** Boards and panels of which a current could be stated. */
    private static int parts(List<Node> nodes) {
        return nodes.stream().mapToInt(node -> 1 + node.panels().size()).sum();
    }

    private static List<String> unknown(Node node) {
        List<String> unknown = new ArrayList<>();
        if (node.fitting().microamps() == Fitting.UNKNOWN) {
            unknown.add(node.name());
        }
        node.panels().stream()
                .filter(panel -> panel.microamps() == Fitting.UNKNOWN)
                .map(Panel::name)
                .forEach(unknown::add);
        return unknown;
    }

    /** What a node and its panels are known to draw, uA. */
    static long knownMicroamps(Node node) {
        long panels = node.panels().stream()
                .mapToLong(panel -> Math.max(0, panel.microamps()))
                .sum();
        return Math.max(0, node.fitting().microamps()) + panels;
    }

    /** What a node and its panels draw, in words that say whether something is missing; empty where all is. */
    static String draws(Node node) {
        long known = knownMicroamps(node);
        int unknown = unknown(node).size();
        if (unknown == 0) {
            return Names.current(known);
        }
        return known == 0 ? "" : "more than " + Names.current(known);
    }
}
