package dropline.scenarios.demo;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Where every control of the cockpit stands, and the moves that brought it there, in time order. */
final class Cockpit {
    private final Map<String, Integer> positions = new TreeMap<>();
    private final List<Move> moves = new ArrayList<>();

    /** A control moved by a person: a position, a count, or for a button 1 pressed and 0 let go. */
    record Move(long atNanos, String control, int value) {}

    /** Where a control stands: 0 until it is moved. */
    int at(String control) {
        return positions.getOrDefault(control, 0);
    }

    boolean on(String control) {
        return at(control) != 0;
    }

    /** Moves a control unless it already stands there. */
    void move(long atNanos, String control, int value) {
        if (at(control) != value) {
            positions.put(control, value);
            moves.add(new Move(atNanos, control, value));
        }
    }

    /** Hands over the moves made since this was last asked. */
    List<Move> takeMoves() {
        List<Move> taken = List.copyOf(moves);
        moves.clear();
        return taken;
    }
}
