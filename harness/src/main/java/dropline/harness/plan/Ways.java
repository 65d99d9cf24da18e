package dropline.harness.plan;

import java.util.ArrayList;
import java.util.List;

/** Ways to share units of boards out over so many segments. A unit, and a part, is a list of board numbers. */
final class Ways {
    private Ways() {}

    /**
     * All of them: every partition, and every choice of which part gets which of the family's segments. Further ones
     * are like its first, and come only when it has no more of its own.
     */
    static List<List<Group>> all(Family family, List<List<Integer>> units, int segments) {
        List<List<Group>> ways = new ArrayList<>();
        for (List<List<Integer>> parts : parts(units, segments)) {
            place(family, parts, new ArrayList<>(), ways);
        }
        return ways;
    }

    /** Every board for itself. */
    static List<List<Integer>> singly(List<Board> boards) {
        return boards.stream().map(board -> List.of(board.number())).toList();
    }

    /** Every partition of units into so many parts. */
    static List<List<List<Integer>>> parts(List<List<Integer>> units, int count) {
        List<List<List<Integer>>> all = new ArrayList<>();
        part(units, 0, count, new ArrayList<>(), all);
        return all;
    }

    private static void part(
            List<List<Integer>> units, int unit, int count, List<List<Integer>> parts, List<List<List<Integer>>> all) {
        if (parts.size() + units.size() - unit < count) {
            return;
        }
        if (unit == units.size()) {
            all.add(List.copyOf(parts));
            return;
        }
        for (int p = 0; p < parts.size(); p++) {
            List<Integer> before = parts.get(p);
            List<Integer> joined = new ArrayList<>(before);
            joined.addAll(units.get(unit));
            parts.set(p, joined);
            part(units, unit + 1, count, parts, all);
            parts.set(p, before);
        }
        if (parts.size() < count) {
            parts.add(units.get(unit));
            part(units, unit + 1, count, parts, all);
            parts.remove(parts.size() - 1);
        }
    }

    private static void place(Family family, List<List<Integer>> parts, List<Group> groups, List<List<Group>> ways) {
        if (groups.size() == parts.size()) {
            ways.add(List.copyOf(groups));
            return;
        }
        List<Integer> boards = parts.get(groups.size()).stream().sorted().toList();
        for (int segment : family.segments()) {
            if (groups.stream().noneMatch(group -> !group.further() && group.segment() == segment)) {
                groups.add(new Group(segment, false, boards));
                place(family, parts, groups, ways);
                groups.remove(groups.size() - 1);
            }
        }
        long further = groups.stream().filter(Group::further).count();
        if (further < parts.size() - family.segments().size()) {
            groups.add(new Group(family.segments().get(0), true, boards));
            place(family, parts, groups, ways);
            groups.remove(groups.size() - 1);
        }
    }

    /**
     * One way for given parts: each part gets the segment from which it has most boards, the greatest such match first;
     * what is left over gets those that are left, then further ones.
     */
    static List<Group> placed(Family family, List<List<Integer>> parts, Boards boards) {
        List<List<Integer>> left =
                new ArrayList<>(parts.stream().filter(part -> !part.isEmpty()).toList());
        List<Integer> free = new ArrayList<>(family.segments());
        List<Group> groups = new ArrayList<>();
        while (!left.isEmpty()) {
            if (free.isEmpty()) {
                left.forEach(part -> groups.add(new Group(
                        family.segments().get(0), true, part.stream().sorted().toList())));
                return groups;
            }
            int bestPart = 0;
            int bestSegment = free.get(0);
            long most = -1;
            for (int part = 0; part < left.size(); part++) {
                for (int segment : free) {
                    long from = left.get(part).stream()
                            .filter(board -> boards.get(board).segment() == segment)
                            .count();
                    if (from > most) {
                        most = from;
                        bestPart = part;
                        bestSegment = segment;
                    }
                }
            }
            groups.add(new Group(
                    bestSegment, false, left.remove(bestPart).stream().sorted().toList()));
            free.remove((Integer) bestSegment);
        }
        return groups;
    }
}
