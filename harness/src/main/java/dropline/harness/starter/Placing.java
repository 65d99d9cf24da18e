package dropline.harness.starter;

import dropline.harness.sheet.Row;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * Which segment each row's panel hangs on: the one it names, in whatever case; failing that, the one that most rows of
 * its place name; failing that, one called by its place, with a second one where a driver could not carry them all.
 */
final class Placing {
    /** A driver carries 32 unit loads (TI SLLA272D); one of them is the controller's. */
    private static final int MOST_NODES = 31;

    private static final String NOWHERE = "segment";

    private final Map<String, String> spelling = new LinkedHashMap<>();
    private final Map<String, Map<String, Integer>> usual = new LinkedHashMap<>();
    private final Map<String, Set<Integer>> boards = new LinkedHashMap<>();

    private Placing(List<Row> rows) {
        for (Row row : rows) {
            if (!row.segment().isEmpty()) {
                spelling.putIfAbsent(folded(row.segment()), row.segment());
                usual.computeIfAbsent(folded(row.place()), p -> new LinkedHashMap<>())
                        .merge(folded(row.segment()), 1, Integer::sum);
            }
        }
    }

    /**
     * Where a row's panel goes.
     *
     * @param guessed whether the row itself does not name it
     */
    record Place(String segment, boolean guessed) {}

    /** One for each row, in their order. */
    static List<Place> of(List<Row> rows) {
        Placing placing = new Placing(rows);
        for (Row row : rows) {
            if (!row.segment().isEmpty()) {
                placing.add(Objects.requireNonNull(placing.spelling.get(folded(row.segment()))), row);
            }
        }
        List<Place> places = new ArrayList<>();
        for (Row row : rows) {
            String named = placing.spelling.get(folded(row.segment()));
            places.add(named != null ? new Place(named, false) : new Place(placing.guess(row), true));
        }
        return places;
    }

    private String guess(Row row) {
        Optional<String> most = Optional.ofNullable(usual.get(folded(row.place())))
                .flatMap(counts -> counts.entrySet().stream()
                        .max(Comparator.comparingInt(Map.Entry::getValue))
                        .map(Map.Entry::getKey))
                .map(key -> Objects.requireNonNull(spelling.get(key)));
        String base = most.orElse(row.place().isEmpty() ? NOWHERE : row.place());
        for (int i = 1; ; i++) {
            String name = i == 1 ? base : base + " " + i;
            if (add(name, row)) {
                return name;
            }
        }
    }

    /** Notes its board; not where the segment is full. */
    private boolean add(String segment, Row row) {
        Set<Integer> here = boards.computeIfAbsent(segment, s -> new LinkedHashSet<>());
        // a board of its own, unless another row has its address: those without one get numbers that no address has
        int board = row.address().orElse(-row.line());
        if (here.size() >= MOST_NODES && !here.contains(board) && row.segment().isEmpty()) {
            return false;
        }
        here.add(board);
        return true;
    }

    private static String folded(String name) {
        return name.toLowerCase(Locale.ROOT).replaceAll("\\s+", " ").strip();
    }
}
