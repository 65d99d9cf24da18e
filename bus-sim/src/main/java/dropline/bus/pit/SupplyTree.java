package dropline.bus.pit;

import java.util.ArrayList;
import java.util.List;

/**
 * The supplies of a pit and the runs of wire that hang on them.
 *
 * <p>A <em>point</em> is where something can be fed from: supplies are points 0 and on, then runs by their far ends.
 *
 * @param supplies in the order of the file
 * @param runs each after the one it is fed from
 * @param hostOnNanos power-up: from the supplies' being on to the host's first state, ns; -1 for once every board is up
 */
public record SupplyTree(List<Supply> supplies, List<Run> runs, long hostOnNanos) {
    /** Nothing said. */
    public static final SupplyTree NONE = new SupplyTree(List.of(), List.of(), -1);

    /** In place of a point: none. */
    public static final int NOWHERE = -1;

    /** Where a supply stands. */
    public enum Location {
        /** A unit of its own. */
        EXTERNAL,
        /** The PC, or a hub on its lead. */
        USB
    }

    /**
     * A source of direct voltage.
     *
     * @param name unique among supplies and runs
     * @param volts what it keeps at its terminals, V
     * @param ratingAmps what its maker allows, A; 0 where nobody said
     */
    public record Supply(String name, double volts, double ratingAmps, Location location) {
        public Supply {
            if (!(volts > 0) || ratingAmps < 0) {
                throw new IllegalArgumentException("a supply needs volts above 0 and a rating not below: volts=" + volts
                        + " rating=" + ratingAmps);
            }
        }
    }

    /**
     * Two wires side by side, there and back, from one point to the next.
     *
     * @param name unique among supplies and runs
     * @param from the point it starts at
     * @param metres its length, one way, m
     * @param jointOhms what its connectors add, there and back together, ohm
     */
    public record Run(String name, int from, Gauge gauge, double metres, double jointOhms) {
        public Run {
            if (!(metres >= 0) || !(jointOhms >= 0)) {
                throw new IllegalArgumentException(
                        "length and joints must not be negative: metres=" + metres + " jointOhms=" + jointOhms);
            }
        }
    }

    public SupplyTree {
        supplies = List.copyOf(supplies);
        runs = List.copyOf(runs);
        for (int r = 0; r < runs.size(); r++) {
            int from = runs.get(r).from();
            if (from < 0 || from >= supplies.size() + r) {
                throw new IllegalArgumentException("a run must start at a point before its own: run=" + runs.get(r));
            }
        }
    }

    public boolean isEmpty() {
        return supplies.isEmpty();
    }

    /** How many points there are. */
    public int points() {
        return supplies.size() + runs.size();
    }

    /** A point's name: that of the supply, or of the run that ends there. */
    public String name(int point) {
        return point < supplies.size()
                ? supplies.get(point).name()
                : runs.get(point - supplies.size()).name();
    }

    /** The point of this name, or {@link #NOWHERE}. */
    public int point(String name) {
        for (int point = 0; point < points(); point++) {
            if (name(point).equals(name)) {
                return point;
            }
        }
        return NOWHERE;
    }

    /** The supply, as an index, that a point hangs on. */
    public int supplyOf(int point) {
        int at = point;
        while (at >= supplies.size()) {
            at = runs.get(at - supplies.size()).from();
        }
        return at;
    }

    /** The points that are fed straight from this one, ascending. */
    public List<Integer> fedFrom(int point) {
        List<Integer> fed = new ArrayList<>();
        for (int r = 0; r < runs.size(); r++) {
            if (runs.get(r).from() == point) {
                fed.add(supplies.size() + r);
            }
        }
        return fed;
    }
}
