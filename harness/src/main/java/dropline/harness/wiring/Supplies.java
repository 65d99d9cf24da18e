package dropline.harness.wiring;

import dropline.bus.pit.Draw;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.SupplyTree;
import dropline.bus.pit.SupplyTree.Run;
import dropline.bus.pit.SupplyTree.Supply;
import dropline.harness.pitfile.Measure;
import dropline.harness.report.TextTable;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/** What hangs on each supply branch, and what of its current is stated, guessed or not known. */
final class Supplies {
    /** What the figures are, wherever they are printed. */
    static final String RUNNING = "Currents are running currents, not starting, stalled or peak ones.";

    private final SupplyTree tree;
    private final Map<String, List<Node>> branches = new LinkedHashMap<>();

    /** A board or a panel: what a current can be said of. */
    private record Part(String name, Draw draws) {
        boolean isStated() {
            return draws.isKnown() && !draws.guessed();
        }

        boolean isGuessed() {
            return draws.guessed();
        }
    }

    Supplies(Pit pit) {
        tree = pit.supplies();
        for (int point = 0; point < tree.points(); point++) {
            branches.put(tree.name(point), new ArrayList<>());
        }
        for (Layout.NodePlace place : Layout.of(pit).nodes()) {
            branches.computeIfAbsent(place.node().fitting().supply(), branch -> new ArrayList<>())
                    .add(place.node());
        }
    }

    /** The wires from each supply to where boards hang, a row each; empty where no supplies are described. */
    String runs() {
        if (tree.isEmpty()) {
            return "";
        }
        TextTable table = new TextTable("supply or run", "feeds from", "wire", ">one way");
        for (int s = 0; s < tree.supplies().size(); s++) {
            Supply supply = tree.supplies().get(s);
            String volts = Measure.voltage().write(Math.round(supply.volts() * 1000));
            table.row(supply.name(), volts, "", "");
            runs(s, "  ", table);
        }
        return table.text();
    }

    private void runs(int point, String indent, TextTable table) {
        for (int fed : tree.fedFrom(point)) {
            Run run = tree.runs().get(fed - tree.supplies().size());
            table.row(
                    indent + run.name(),
                    tree.name(point),
                    run.gauge().name() + (run.gauge().stranded() ? "" : " solid"),
                    Measure.length().write(Math.round(run.metres() * 1000)));
            runs(fed, indent + "  ", table);
        }
    }

    /** A row for each branch; boards on no stated branch come last. */
    String table() {
        TextTable table = new TextTable("supply branch", ">boards", ">stated", ">guessed", "not known");
        branches.forEach((branch, nodes) -> {
            if (!branch.isEmpty() && !nodes.isEmpty()) {
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
        List<Part> parts = nodes.stream().flatMap(node -> parts(node).stream()).toList();
        List<Part> unknown =
                parts.stream().filter(part -> !part.draws.isKnown()).toList();
        table.row(
                branch,
                Integer.toString(nodes.size()),
                sum(parts, Part::isStated),
                sum(parts, Part::isGuessed),
                unknown.isEmpty()
                        ? ""
                        : unknown.size() + " of " + parts.size() + " figures, first " + unknown.get(0).name);
    }

    private static List<Part> parts(Node node) {
        List<Part> parts = new ArrayList<>();
        parts.add(new Part(node.name(), node.fitting().draws()));
        for (Panel panel : node.panels()) {
            parts.add(new Part(panel.name(), panel.running()));
        }
        return parts;
    }

    private static String sum(List<Part> parts, Predicate<Part> which) {
        return parts.stream()
                .filter(which)
                .map(Part::draws)
                .reduce(Draw::plus)
                .map(draws -> Measure.current().write(draws.microamps()))
                .orElse("-");
    }

    /** What a node and its panels draw, in words that say what is guessed or missing; empty where all is missing. */
    static String draws(Node node) {
        List<Draw> known =
                parts(node).stream().map(Part::draws).filter(Draw::isKnown).toList();
        boolean all = known.size() == parts(node).size();
        return known.stream()
                .reduce(Draw::plus)
                .map(sum -> (all ? "" : "more than ") + (sum.guessed() ? "about " : "")
                        + Measure.current().write(sum.microamps()) + " running")
                .orElse("");
    }
}
