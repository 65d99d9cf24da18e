package dropline.harness.plan;

import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Boards that speak alike, so that any of them can share a segment with any other, and the segments they are on.
 *
 * @param segments indices into the pit's, ascending
 * @param boards in the order of the pit file
 */
record Family(List<Integer> segments, List<Board> boards) {
    Family {
        segments = List.copyOf(segments);
        boards = List.copyOf(boards);
    }

    /** The families of a pit; boards straight on USB share nothing and belong to none. */
    static List<Family> of(Pit pit, List<String> order) {
        Map<Speech, List<Integer>> alike = new LinkedHashMap<>();
        for (int s = 0; s < pit.segments().size(); s++) {
            Segment segment = pit.segments().get(s);
            if (segment.isShared()) {
                alike.computeIfAbsent(Speech.of(segment), speech -> new ArrayList<>())
                        .add(s);
            }
        }
        return alike.values().stream()
                .map(segments -> new Family(segments, boards(pit, segments, order)))
                .toList();
    }

    private static List<Board> boards(Pit pit, List<Integer> segments, List<String> order) {
        List<Board> boards = new ArrayList<>();
        for (int s : segments) {
            pit.segments().get(s).nodes().forEach(node -> boards.add(new Board(order.indexOf(node.name()), s, node)));
        }
        boards.sort(Comparator.comparingInt(Board::number));
        return boards;
    }

    /** How the parties of a segment speak: equal for those that can share one. */
    static Object speech(Segment segment) {
        return Speech.of(segment);
    }

    /** How parties speak: names tell built-in protocols apart, what they describe the others. */
    private record Speech(String protocol, Object described, Object format) {
        static Speech of(Segment segment) {
            String name = segment.protocol().name();
            boolean builtIn = name.equals("dropline") || name.equals("modbus-rtu");
            return new Speech(name, builtIn ? name : segment.protocol(), segment.format());
        }
    }
}
