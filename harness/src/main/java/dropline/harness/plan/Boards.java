package dropline.harness.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Every board that may move, by its number. */
final class Boards {
    private final Map<Integer, Board> byNumber = new LinkedHashMap<>();

    Boards(List<Family> families) {
        families.forEach(family -> family.boards().forEach(board -> byNumber.put(board.number(), board)));
    }

    Board get(int number) {
        Board board = byNumber.get(number);
        if (board == null) {
            throw new IllegalArgumentException("a board must be one that may move: number=" + number);
        }
        return board;
    }

    List<Board> of(Group group) {
        return group.boards().stream().map(this::get).toList();
    }

    /** Whether it gets another segment than it is on now. */
    boolean moves(int board, Group group) {
        return group.further() || get(board).segment() != group.segment();
    }

    /** Boards that share a place, directly or through others, stay one unit; by their first board. */
    static List<List<Board>> units(List<Board> boards) {
        List<List<Board>> units = new ArrayList<>();
        for (Board board : boards) {
            List<Board> joined = new ArrayList<>();
            List<List<Board>> apart = new ArrayList<>();
            for (List<Board> unit : units) {
                if (unit.stream().anyMatch(other -> isNear(board, other))) {
                    joined.addAll(unit);
                } else {
                    apart.add(unit);
                }
            }
            joined.add(board);
            joined.sort(Comparator.comparingInt(Board::number));
            apart.add(List.copyOf(joined));
            apart.sort(Comparator.comparingInt(unit -> unit.get(0).number()));
            units = apart;
        }
        return units;
    }

    private static boolean isNear(Board one, Board other) {
        return one.places().stream().anyMatch(other.places()::contains);
    }
}
