package dropline.harness.wiring;

import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import java.util.ArrayList;
import java.util.List;

/** Labels for plugs and cable ends, to print and cut out. */
final class Labels {
    private static final int WIDTH = 30;
    private static final int IN_A_ROW = 3;

    private Labels() {}

    /** One for each node, in the order on the cable. */
    static String of(Pit pit) {
        List<List<String>> labels = new ArrayList<>();
        for (Segment segment : pit.segments()) {
            segment.cable()
                    .arms()
                    .forEach(arm -> arm.stops().stream()
                            .filter(stop -> stop >= 0)
                            .forEach(stop ->
                                    labels.add(label(segment, segment.nodes().get(stop)))));
        }
        StringBuilder text = new StringBuilder();
        for (int first = 0; first < labels.size(); first += IN_A_ROW) {
            row(text, labels.subList(first, Math.min(first + IN_A_ROW, labels.size())));
        }
        return text.toString();
    }

    private static List<String> label(Segment segment, Node node) {
        String supply = node.fitting().supply();
        String connector = node.fitting().connector();
        return List.of(
                node.name(),
                segment.name() + ", address " + node.address(),
                supply.isEmpty() ? "" : "supply " + supply,
                connector.isEmpty() ? "" : "plug " + connector);
    }

    private static void row(StringBuilder text, List<List<String>> labels) {
        String rule = ("+" + "-".repeat(WIDTH) + "+  ").repeat(labels.size()).stripTrailing() + "\n";
        text.append(rule);
        for (int line = 0; line < labels.get(0).size(); line++) {
            StringBuilder drawn = new StringBuilder();
            for (List<String> label : labels) {
                drawn.append("| ").append(padded(label.get(line))).append(" |  ");
            }
            text.append(drawn.toString().stripTrailing()).append('\n');
        }
        text.append(rule);
    }

    private static String padded(String words) {
        int room = WIDTH - 2;
        int length = words.codePointCount(0, words.length());
        if (length > room) {
            return words.substring(0, words.offsetByCodePoints(0, room - 3)) + "...";
        }
        return words + " ".repeat(room - length);
    }
}
