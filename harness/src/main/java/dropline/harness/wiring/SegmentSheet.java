package dropline.harness.wiring;

import dropline.bus.copper.Pair;
import dropline.bus.pit.Cable;
import dropline.bus.pit.Cable.Arm;
import dropline.bus.pit.Cable.Topology;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Wire;
import dropline.bus.rule.Unit;
import dropline.harness.copper.CopperText;
import dropline.harness.copper.Stops;
import dropline.harness.report.Paragraphs;
import dropline.harness.report.TextTable;
import dropline.harness.ruling.Amounts;
import java.util.List;

/** One segment of the sheet: what follows on the cable, and what belongs where. */
final class SegmentSheet {
    private final Pit pit;
    private final int index;
    private final Segment segment;
    private final StringBuilder text = new StringBuilder();
    private final Paragraphs paragraphs = new Paragraphs(text);

    SegmentSheet(Pit pit, int index) {
        this.pit = pit;
        this.index = index;
        this.segment = pit.segments().get(index);
    }

    String text() {
        List<Pair> pairs = Pair.of(pit, index);
        if (pairs.isEmpty()) {
            direct();
        }
        shape(pairs);
        for (Pair pair : pairs) {
            if (pair.isOneOfSeveral() && pairs.size() > 1) {
                text.append("\nArm ").append(pair.arms().get(0).name()).append(":\n");
            }
            text.append(table(pair));
            terminators(pair);
            bias(pair);
        }
        rulings(pairs);
        return text.toString();
    }

    /** Only where something is said of the cable: without that, half of the rules are undecided. */
    private void rulings(List<Pair> pairs) {
        if (!pairs.isEmpty() && !segment.cable().wire().equals(Wire.UNKNOWN)) {
            for (Pair pair : pairs) {
                double metres = pair.metres();
                if (!Double.isNaN(metres)) {
                    paragraphs.add("  Length: ", Amounts.of(metres, Unit.METRES) + " from end to end.");
                }
            }
            text.append("\n  What the rules of copper say (docs/copper.md):\n").append(CopperText.of(pit, index));
        }
    }

    private void direct() {
        Node node = segment.nodes().get(0);
        paragraphs.add(
                "",
                node.name() + " hangs straight on the PC's USB: no pair, no terminator, no bias. "
                        + Names.speed(segment) + ", address " + node.address() + ", supply "
                        + Names.orDash(node.fitting().supply()) + ", connector "
                        + Names.orDash(node.fitting().connector()) + ".");
    }

    private void shape(List<Pair> pairs) {
        if (pairs.isEmpty()) {
            return;
        }
        String shape;
        if (segment.cable().topology() == Topology.CHAIN) {
            shape = "A chain: from board to board, no branches.";
        } else if (pairs.size() > 1) {
            shape = "A star whose " + pairs.size() + " arms are pairs of their own: do not join them.";
        } else {
            shape = "A star of " + pairs.get(0).arms().size() + " arms on one pair.";
        }
        paragraphs.add("", Names.speed(segment) + ". " + shape);
        if (pairs.get(0).isBranched()) {
            paragraphs.add(
                    "  ! ",
                    "Arms that are joined are branches of one line: only two of them can be terminated, the others"
                            + " reflect. Keep the others short, or give each port a transceiver of its own. "
                            + (Double.isNaN(pairs.get(0).metres())
                                    ? "The two with the most boards are taken for the longest; if others are longer,"
                                            + " put the terminators there."
                                    : "The two longest are terminated."));
        }
    }

    private String table(Pair pair) {
        TextTable table = new TextTable(">", "on the cable", ">address", "connector", "supply", "fit or remove");
        int position = 0;
        for (Arm arm : pair.arms()) {
            if (pair.arms().size() > 1) {
                table.row("", "arm " + arm.name() + ":", "", "", "", "");
            }
            for (int stop : arm.stops()) {
                row(table, pair, stop, ++position);
            }
        }
        if (!pair.stops().contains(Cable.CONTROLLER)) {
            row(table, pair, Cable.CONTROLLER, ++position);
        }
        return table.text();
    }

    private void row(TextTable table, Pair pair, int stop, int position) {
        boolean inTheMiddle = stop == Cable.CONTROLLER && !pair.stops().contains(stop);
        String number = inTheMiddle ? "" : Integer.toString(position);
        if (stop == Cable.CONTROLLER) {
            String name = Stops.controller(pit, index) + (inTheMiddle ? " (where the arms meet)" : " (polls)");
            table.row(number, name, "", "", "", Fit.of(pair, stop));
            return;
        }
        Node node = segment.nodes().get(stop);
        table.row(
                number,
                node.name(),
                Integer.toString(node.address()),
                Names.orDash(node.fitting().connector()),
                Names.orDash(node.fitting().supply()),
                Fit.of(pair, stop));
    }

    private void terminators(Pair pair) {
        List<String> ends =
                pair.ends().stream().map(stop -> Stops.name(pit, index, stop)).toList();
        paragraphs.add("  Terminators: ", "at " + Names.row(ends) + ", nowhere else.");
    }

    private void bias(Pair pair) {
        Integer at = pair.biasAt();
        paragraphs.add(
                "  Bias: ",
                at == null
                        ? "none, says the pit file (bias: no). Unless all receivers are fail-safe, boards will hear"
                                + " characters that nobody sent: fit it at one place."
                        : "at " + Stops.name(pit, index, at) + ", nowhere else.");
        if (at != null && pair.isWeakBiasStrongTogether()) {
            paragraphs.add(
                    "  ! ",
                    "Modules whose own resistors are too weak one by one come to 2 x " + Math.round(pair.weakBiasOhms())
                            + " ohm together, as much as a second place: some of them have to come off too.");
        }
    }
}
