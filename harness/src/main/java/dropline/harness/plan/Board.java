package dropline.harness.plan;

import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import java.util.List;

/**
 * A board that may be put on another segment, with all its panels.
 *
 * @param number its position among all boards of the pit file
 * @param segment index of the segment it is on now
 * @param node as it is now
 */
record Board(int number, int segment, Node node) {

    /** Where its panels are mounted, each place once, in the order of the file; without those nobody named. */
    List<String> places() {
        return node.panels().stream()
                .map(Panel::place)
                .filter(place -> !place.isEmpty())
                .distinct()
                .toList();
    }

    /** The wider parts of the cockpit those places are in: what stands before a place's first comma. */
    List<String> areas() {
        return places().stream()
                .map(place -> place.split(",", 2)[0].strip())
                .distinct()
                .toList();
    }
}
