package dropline.harness.plan;

import dropline.bus.pit.Cable;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.plan.PollFloor;
import dropline.bus.plan.SegmentWire;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * About how long each board keeps its segment busy in a cycle, ns: its polls at their mean, and a few characters for
 * each value it shows. Only ranks what is tried first; what passes is played.
 */
final class Loads {
    private static final int CHARACTERS_A_VALUE = 4;

    private final Map<Integer, Double> byNumber = new LinkedHashMap<>();

    Loads(Pit pit, Family family) {
        for (Board board : family.boards()) {
            Segment now = pit.segments().get(board.segment());
            Segment alone = now.with(List.of(board.node()), Cable.chain(1));
            PollFloor floor = PollFloor.of(pit.with(List.of(alone), List.of()), alone);
            int values = SegmentWire.signals(pit, board.node()).size();
            byNumber.put(
                    board.number(),
                    floor.meanCycleNanos() + (double) values * CHARACTERS_A_VALUE * floor.characterNanos());
        }
    }

    double of(List<Integer> boards) {
        return boards.stream()
                .mapToDouble(board -> byNumber.getOrDefault(board, 0.0))
                .sum();
    }

    /** Which of the parts has least; of equals, the first. */
    int emptiest(List<List<Integer>> parts) {
        int emptiest = 0;
        for (int p = 1; p < parts.size(); p++) {
            emptiest = of(parts.get(p)) < of(parts.get(emptiest)) ? p : emptiest;
        }
        return emptiest;
    }

    /** Units spread over so many parts: the longest first, each to the part that has least. */
    List<List<Integer>> spread(List<List<Integer>> units, int parts) {
        List<List<Integer>> spread = new ArrayList<>();
        for (int p = 0; p < parts; p++) {
            spread.add(new ArrayList<>());
        }
        units.stream()
                .sorted(Comparator.comparingDouble((List<Integer> unit) -> -of(unit)))
                .forEach(unit -> spread.get(emptiest(spread)).addAll(unit));
        return spread;
    }
}
