package dropline.harness.size;

import dropline.bus.pit.Cable;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;

/**
 * Moves boards from a segment to another one of the same pit: those whose signals change most often, which cost the
 * most where they are.
 *
 * @param pit the pit with them moved
 * @param to index of the segment they went to
 * @param names of the boards moved
 */
record Moving(Pit pit, int to, List<String> names) {
    Moving {
        names = List.copyOf(names);
    }

    /**
     * Every way to move the busiest of a segment's boards, one for each segment with room.
     *
     * @param boards how many to move, less than there are
     * @param activity for each signal of the pit, how often it changes
     */
    static List<Moving> all(Pit pit, int segment, int boards, List<Long> activity) {
        List<Node> here = pit.segments().get(segment).nodes();
        List<Node> moved = here.stream()
                .sorted(Comparator.comparingLong((Node node) -> activity(node, activity))
                        .reversed())
                .limit(boards)
                .toList();
        List<Node> left = here.stream().filter(node -> !moved.contains(node)).toList();
        List<Moving> ways = new ArrayList<>();
        for (int to = 0; to < pit.segments().size(); to++) {
            Segment target = pit.segments().get(to);
            FreeNumbers addresses = FreeNumbers.ofAddresses(target);
            if (to != segment
                    && target.isShared()
                    && addresses.left() >= boards
                    && target.protocol().getClass()
                            == pit.segments().get(segment).protocol().getClass()) {
                List<Node> there = new ArrayList<>(target.nodes());
                moved.forEach(node -> there.add(at(node, addresses.next(1), target.baud())));
                Pit without = pit.with(segment, with(pit.segments().get(segment), left));
                ways.add(new Moving(
                        without.with(to, with(target, there)),
                        to,
                        moved.stream().map(Node::name).toList()));
            }
        }
        return ways;
    }

    private static long activity(Node node, List<Long> activity) {
        TreeSet<Integer> shown = new TreeSet<>();
        node.panels().forEach(panel -> panel.indicators().forEach(indicator -> shown.addAll(indicator.signals())));
        return shown.stream().mapToLong(signal -> activity.get(signal)).sum();
    }

    private static Node at(Node node, int address, int baud) {
        return new Node(
                node.name(),
                address,
                node.weight(),
                node.profile().at(baud),
                node.panels(),
                node.registers(),
                node.fitting());
    }

    /** Only the order of polling counts here, so the cable is taken as a chain along it. */
    private static Segment with(Segment segment, List<Node> nodes) {
        return segment.with(nodes, Cable.chain(nodes.size()));
    }

    /** From what is played to the pit before to what is played to this one. */
    Mirror mirror(Pit before) {
        return Mirror.between(
                Layout.of(before), Layout.of(pit), before.signals().size());
    }
}
