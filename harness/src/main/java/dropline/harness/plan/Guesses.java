package dropline.harness.plan;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Ways to share a large family out over so many segments that are likely to do: such as leave present segments or
 * places whole, then boards spread by their load, then boards moved from what is overfull to what is emptiest. What was
 * too much stays too much with more boards: a likely assumption, which saves time and can only cost a better plan.
 */
final class Guesses {
    private static final int MOST_UNITS = 8;
    private static final int MOST_WAYS = 24;
    private static final int MOST_MOVES = 24;

    private final Family family;
    private final Boards boards;
    private final Fits fits;
    private final Loads loads;
    private final List<List<Integer>> places;
    private final List<List<Integer>> present = new ArrayList<>();
    private final List<Group> tooMuch = new ArrayList<>();
    private @Nullable Refusal refused;

    Guesses(Family family, Boards boards, Fits fits, Loads loads) {
        this.family = family;
        this.boards = boards;
        this.fits = fits;
        this.loads = loads;
        places = numbers(Boards.units(family.boards()));
        for (int segment : family.segments()) {
            present.add(family.boards().stream()
                    .filter(board -> board.segment() == segment)
                    .map(Board::number)
                    .toList());
        }
    }

    /** Why the likeliest way of the last number asked for would not do; null where it does. */
    @Nullable
    Refusal refused() {
        return refused;
    }

    private @Nullable Refusal firstRefusal(List<Group> way) {
        return way.stream()
                .map(fits::refusal)
                .filter(Objects::nonNull)
                .findFirst()
                .orElse(null);
    }

    /** The first that will do. */
    Optional<List<Group>> of(int segments) throws IOException {
        refused = null;
        List<List<Group>> ways = new ArrayList<>();
        whole(present, segments, ways);
        whole(places, segments, ways);
        ways.add(placed(loads.spread(places, segments)));
        ways.add(placed(loads.spread(Ways.singly(family.boards()), segments)));
        for (List<Group> way : Cost.cheapestFirst(ways, boards)) {
            if (way.size() == segments && doAll(way)) {
                return Optional.of(way);
            }
            refused = refused == null ? firstRefusal(way) : refused;
        }
        if (segments == 1) {
            return Optional.empty();
        }
        List<List<List<Integer>>> starts = new ArrayList<>();
        if (segments >= present.size()) {
            List<List<Integer>> start = new ArrayList<>(present);
            while (start.size() < segments) {
                start.add(List.of());
            }
            starts.add(start);
        }
        starts.add(loads.spread(places, segments));
        for (List<List<Integer>> start : starts) {
            Optional<List<Group>> eased = eased(start);
            if (eased.isPresent()) {
                return eased;
            }
        }
        return Optional.empty();
    }

    /** Partitions that leave units whole, the cheapest first. */
    private void whole(List<List<Integer>> units, int segments, List<List<Group>> ways) {
        if (units.size() >= segments && units.size() <= MOST_UNITS) {
            List<List<Group>> all = new ArrayList<>();
            Ways.parts(units, segments).forEach(parts -> all.add(placed(parts)));
            Cost.cheapestFirst(all, boards).stream().limit(MOST_WAYS).forEach(ways::add);
        }
    }

    private List<Group> placed(List<List<Integer>> parts) {
        return Ways.placed(family, parts, boards);
    }

    private boolean doAll(List<Group> way) throws IOException {
        for (Group group : way) {
            if (!does(group)) {
                return false;
            }
        }
        return true;
    }

    private boolean does(Group group) throws IOException {
        boolean known = tooMuch.stream()
                .anyMatch(much ->
                        much.segment() == group.segment() && group.boards().containsAll(much.boards()));
        if (known) {
            return false;
        }
        boolean does = fits.of(group).isPresent();
        if (!does) {
            tooMuch.add(group);
        }
        return does;
    }

    /** Moves a unit from a part that is too much to the emptiest, again and again. */
    private Optional<List<Group>> eased(List<List<Integer>> start) throws IOException {
        List<List<Integer>> parts = new ArrayList<>(start);
        for (int move = 0; move <= MOST_MOVES; move++) {
            int full = firstTooMuch(parts);
            if (full < 0) {
                return Optional.of(placed(parts));
            }
            int empty = loads.emptiest(parts);
            Optional<List<Integer>> unit = evening(inside(places, parts.get(full)), parts.get(full), parts.get(empty))
                    .or(() -> evening(singly(parts.get(full)), parts.get(full), parts.get(empty)));
            if (full == empty || unit.isEmpty()) {
                return Optional.empty();
            }
            parts.set(full, without(parts.get(full), unit.get()));
            parts.set(empty, with(parts.get(empty), unit.get()));
        }
        return Optional.empty();
    }

    private int firstTooMuch(List<List<Integer>> parts) throws IOException {
        List<Group> groups = placed(parts);
        for (Group group : groups) {
            if (!does(group)) {
                for (int p = 0; p < parts.size(); p++) {
                    if (parts.get(p).stream().sorted().toList().equals(group.boards())) {
                        return p;
                    }
                }
            }
        }
        return groups.size() == parts.size() ? -1 : loads.emptiest(parts);
    }

    /** The unit whose going over makes the two most alike; empty where none makes them more so. */
    private Optional<List<Integer>> evening(List<List<Integer>> units, List<Integer> full, List<Integer> empty) {
        double apart = loads.of(full) - loads.of(empty);
        List<Integer> best = null;
        double least = Math.abs(apart);
        for (List<Integer> unit : units) {
            double then = Math.abs(apart - 2 * loads.of(unit));
            if (unit.size() < full.size() && then < least) {
                least = then;
                best = unit;
            }
        }
        return Optional.ofNullable(best);
    }

    /** The units that are wholly in a part. */
    private static List<List<Integer>> inside(List<List<Integer>> units, List<Integer> part) {
        return units.stream().filter(part::containsAll).toList();
    }

    private static List<List<Integer>> singly(List<Integer> part) {
        return part.stream().map(List::of).toList();
    }

    private static List<Integer> without(List<Integer> part, List<Integer> unit) {
        return part.stream().filter(board -> !unit.contains(board)).toList();
    }

    private static List<Integer> with(List<Integer> part, List<Integer> unit) {
        List<Integer> joined = new ArrayList<>(part);
        joined.addAll(unit);
        return joined.stream().sorted().toList();
    }

    private static List<List<Integer>> numbers(List<List<Board>> units) {
        return units.stream()
                .map(unit -> unit.stream().map(Board::number).toList())
                .toList();
    }
}
