package dropline.harness.wiring;

import dropline.bus.pit.Node;
import dropline.bus.pit.Segment;
import java.util.List;

/** What things are called on the sheet and on the cards. */
final class Names {
    private Names() {}

    /** Rate and format: {@code 500000 baud 8N1}. */
    static String speed(Segment segment) {
        return segment.baud() + " baud " + segment.format();
    }

    /** A text, or a dash where nothing was said. */
    static String orDash(String text) {
        return text.isEmpty() ? "-" : text;
    }

    /** Names in a row with a last "and". */
    static String row(List<String> names) {
        if (names.size() < 2) {
            return String.join("", names);
        }
        return String.join(", ", names.subList(0, names.size() - 1)) + " and " + names.get(names.size() - 1);
    }

    /** The panels a node carries, planned ones marked. */
    static List<String> panels(Node node) {
        return node.panels().stream()
                .map(panel -> switch (panel.status()) {
                    case BUILT -> panel.name();
                    case BENCH -> panel.name() + " (on the bench)";
                    case PLANNED -> panel.name() + " (planned)";
                })
                .toList();
    }
}
