package dropline.bus.copper;

import dropline.bus.pit.Cable;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.supply.State;
import dropline.bus.supply.Supplies;
import java.util.ArrayList;
import java.util.List;

/**
 * How far the ground of each board of a segment is lifted above one point that all share, by the current that its
 * supply's return wire carries.
 *
 * @param ofNodes by position in the segment's nodes, V; those that are left out are not lifted
 * @param ofController the controller's, V
 * @param basis what they rest on, for people
 */
public record GroundVolts(List<Double> ofNodes, double ofController, String basis) {
    /** Of which nothing is known: taken for none. */
    public static final GroundVolts UNKNOWN = new GroundVolts(
            List.of(), 0, "what return currents lift the grounds by is not known, and taken for nothing");

    public GroundVolts {
        ofNodes = List.copyOf(ofNodes);
    }

    /**
     * With every lamp lit, which is when the return wires carry most for long. The minus terminals of all supplies, and
     * the controller, are taken to lie at one potential.
     */
    public static GroundVolts of(Pit pit, int segment) {
        if (pit.supplies().isEmpty()) {
            return UNKNOWN;
        }
        List<Layout.NodePlace> places = Layout.of(pit).nodes();
        double[] all = Supplies.groundVolts(pit, State.LAMP_TEST);
        List<Double> volts = new ArrayList<>();
        int unknown = 0;
        for (int node = 0; node < all.length; node++) {
            if (places.get(node).segment() == segment) {
                unknown += Double.isNaN(all[node]) ? 1 : 0;
                volts.add(Double.isNaN(all[node]) ? 0 : all[node]);
            }
        }
        return new GroundVolts(
                volts,
                0,
                "lifted by the return currents of a lamp test, the minus of all supplies and the controller joined"
                        + (unknown == 0
                                ? ""
                                : "; of " + unknown + " boards nothing is known, which is taken for none"));
    }

    /** At a stop, V. */
    double at(int stop) {
        if (stop == Cable.CONTROLLER) {
            return ofController;
        }
        return stop < ofNodes.size() ? ofNodes.get(stop) : 0;
    }
}
