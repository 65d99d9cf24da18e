package dropline.harness.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

/**
 * What one dislikes about a way to share boards out, the worst first; of equals, the earlier in the order of trying is
 * taken.
 *
 * @param segments how many it takes
 * @param splitPlaces how often a place is split over one segment more
 * @param splitAreas the same of wider parts of the cockpit
 * @param moved boards that are put on another segment than they are on now
 */
record Cost(int segments, int splitPlaces, int splitAreas, int moved) implements Comparable<Cost> {
    private static final Comparator<Cost> ORDER = Comparator.comparingInt(Cost::segments)
            .thenComparingInt(Cost::splitPlaces)
            .thenComparingInt(Cost::splitAreas)
            .thenComparingInt(Cost::moved);

    static Cost of(List<Group> groups, Boards boards) {
        return new Cost(
                groups.size(), splits(groups, boards, Board::places), splits(groups, boards, Board::areas), (int)
                        groups.stream()
                                .flatMap(group -> group.boards().stream().filter(board -> boards.moves(board, group)))
                                .count());
    }

    private static int splits(List<Group> groups, Boards boards, Function<Board, List<String>> of) {
        return on(groups, boards, of).values().stream()
                .mapToInt(segments -> segments.size() - 1)
                .sum();
    }

    /** Which of the groups each place is on. */
    static Map<String, Set<Integer>> on(List<Group> groups, Boards boards, Function<Board, List<String>> of) {
        Map<String, Set<Integer>> on = new LinkedHashMap<>();
        for (int g = 0; g < groups.size(); g++) {
            for (int board : groups.get(g).boards()) {
                for (String place : of.apply(boards.get(board))) {
                    on.computeIfAbsent(place, name -> new LinkedHashSet<>()).add(g);
                }
            }
        }
        return on;
    }

    /** The cheapest first, equals in the order given. */
    static List<List<Group>> cheapestFirst(List<List<Group>> ways, Boards boards) {
        record Priced(Cost cost, List<Group> way) {}
        List<Priced> priced = new ArrayList<>();
        ways.forEach(way -> priced.add(new Priced(of(way, boards), way)));
        priced.sort(Comparator.comparing(Priced::cost));
        return priced.stream().map(Priced::way).toList();
    }

    @Override
    public int compareTo(Cost other) {
        return ORDER.compare(this, other);
    }
}
