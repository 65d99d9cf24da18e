package dropline.harness.power;

import dropline.bus.rule.Rule;
import dropline.bus.rule.Ruling;
import dropline.bus.supply.State;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the supplies of a pit come to.
 *
 * @param pit its name
 * @param points supplies, each followed by its runs in the order of the tree
 * @param boards those on a supply, in the order of the pit
 * @param unfed how many boards are on no supply
 * @param rulings what every rule came to on every supply
 * @param figures what the currents rest on
 * @param zones backlight zones
 * @param traffic what their levels cost on the segments that have some
 * @param powerUp from the supplies' being switched on to everything being shown
 * @param flight the currents over a recording; null without one
 */
public record PowerResult(
        String pit,
        List<Point> points,
        List<Board> boards,
        int unfed,
        List<Ruling> rulings,
        Figures figures,
        List<Zone> zones,
        List<Traffic> traffic,
        @Nullable PowerUp powerUp,
        @Nullable Flight flight) {
    /** Raised when a key of the document goes or changes its meaning. */
    public static final int VERSION = 1;

    /**
     * A supply, or the far end of a run.
     *
     * @param number the point's, in {@link dropline.bus.pit.SupplyTree}
     * @param depth 0 for a supply
     * @param volts a supply's, V; 0 for a run
     * @param ratingAmps a supply's, A; 0 where it is not stated, and for a run
     * @param wire a run's; empty for a supply
     * @param metres a run's, one way
     * @param ohms a run's, there and back
     * @param boards how many hang on this very point
     * @param amps what flows into it, by state in the order of {@link State}, A; NaN where its supply collapses
     */
    public record Point(
            int number,
            String name,
            int depth,
            double volts,
            double ratingAmps,
            String wire,
            double metres,
            double ohms,
            int boards,
            List<Double> amps) {
        public Point {
            amps = List.copyOf(amps);
        }

        public boolean isSupply() {
            return depth == 0;
        }

        public double amps(State state) {
            return amps.get(state.ordinal());
        }
    }

    /**
     * A board and the worst that its supply does to it.
     *
     * @param node index in {@link dropline.bus.pit.Layout#nodes()}
     * @param supply the name of its supply
     * @param fedBy the point it hangs on
     * @param volts the least at its supply terminals, V; 0 where the supply collapses
     * @param when in which state that is
     * @param worksDownTo what it needs, V; 0 where nobody said
     * @param groundVolts the most by which its ground is lifted, V
     * @param regulatorWatts the most heat in its linear regulator while a load lasts, W
     * @param backFed whether it is tied to USB as well, with nothing to keep the two apart
     */
    public record Board(
            int node,
            String name,
            String supply,
            String fedBy,
            double volts,
            State when,
            double worksDownTo,
            double groundVolts,
            double regulatorWatts,
            boolean backFed) {}

    /**
     * What it costs to tell all zones of a segment a new level, at so many a second.
     *
     * @param zones how many there are
     * @param broadcast bytes a second, once for all; 0 where its protocol cannot
     * @param oneByOne bytes a second, a request to each board
     * @param rate levels a second
     */
    public record Traffic(String segment, int zones, long broadcast, long oneByOne, int rate) {}

    /** How many of the currents are stated as figures, guessed, or not known. */
    public record Figures(int stated, int guessed, int unknown) {}

    public PowerResult {
        points = List.copyOf(points);
        boards = List.copyOf(boards);
        rulings = List.copyOf(rulings);
        zones = List.copyOf(zones);
        traffic = List.copyOf(traffic);
    }

    /** The supplies among the points. */
    public List<Point> supplies() {
        return points.stream().filter(Point::isSupply).toList();
    }

    /** Whether no rule that is more than guidance is broken or open. */
    public boolean passes() {
        return rulings.stream().allMatch(PowerResult::passes);
    }

    private static boolean passes(Ruling ruling) {
        return ruling.standing() == Ruling.Standing.HOLDS
                || (ruling.standing() == Ruling.Standing.BROKEN && ruling.rule().weight() == Rule.Weight.GUIDANCE);
    }

    /** What of the recording was left out, a sentence each. */
    public List<String> losses() {
        return flight == null ? List.of() : flight.losses();
    }

    PowerResult over(Flight recorded) {
        return new PowerResult(pit, points, boards, unfed, rulings, figures, zones, traffic, powerUp, recorded);
    }

    PowerResult from(PowerUp start) {
        return new PowerResult(pit, points, boards, unfed, rulings, figures, zones, traffic, start, flight);
    }
}
