package dropline.harness.size;

import dropline.bus.pit.Control;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Segment;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The nodes of a segment that need trying dead: of those alike in firmware, weight and what their panels are made of,
 * the first. For who waits, one of them is as dead as another.
 */
public final class DeadClasses {
    private DeadClasses() {}

    /** Positions in the segment's nodes, ascending. */
    public static List<Integer> of(Segment segment) {
        Map<String, Integer> first = new LinkedHashMap<>();
        for (int i = 0; i < segment.nodes().size(); i++) {
            first.putIfAbsent(kind(segment.nodes().get(i)), i);
        }
        return List.copyOf(first.values());
    }

    private static String kind(Node node) {
        List<String> parts = new ArrayList<>();
        for (Panel panel : node.panels()) {
            for (Indicator indicator : panel.indicators()) {
                parts.add(indicator.kind() + " " + indicator.signals().size() + " " + indicator.refreshEveryNanos()
                        + " " + indicator.refreshTakesNanos() + " " + indicator.blocks());
            }
            for (Control control : panel.controls()) {
                parts.add(control.kind().toString());
            }
        }
        return node.profile() + " " + node.weight() + " " + parts;
    }
}
