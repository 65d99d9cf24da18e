package dropline.bus.pit;

import java.util.List;

/**
 * What stands between the host and some segments.
 *
 * @param name unique among the pit's hubs
 * @param kind what it does
 * @param turnNanos time a board's program needs before each frame it sends, one at a time for all its segments, ns
 * @param segments what hangs on it, as indices into {@link Pit#segments()}, ascending; one only unless it is a board
 */
public record Hub(String name, Kind kind, long turnNanos, List<Integer> segments) {

    /** What a hub does. */
    public enum Kind {
        /** Polls its segments by itself: they share its program and its USB lead. */
        BOARD,
        /** Repeats one conversation on every port: each arm of its segment is a pair of its own. */
        TRANSCEIVERS,
        /** Joins wires: all arms of its segment are one pair. */
        SPLITTER
    }

    public Hub {
        segments = List.copyOf(segments);
        if (turnNanos < 0) {
            throw new IllegalArgumentException("a turn must not be negative: turnNanos=" + turnNanos);
        }
        if (kind != Kind.BOARD && (segments.size() > 1 || turnNanos > 0)) {
            throw new IllegalArgumentException("only a board has several segments or a turn: kind=" + kind
                    + " segments=" + segments + " turnNanos=" + turnNanos);
        }
    }

    /** The same with other segments on it. */
    public Hub with(List<Integer> others) {
        return new Hub(name, kind, turnNanos, others);
    }
}
