package dropline.bus.copper;

import dropline.bus.pit.Cable;
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

    /** At a stop, V. */
    double at(int stop) {
        if (stop == Cable.CONTROLLER) {
            return ofController;
        }
        return stop < ofNodes.size() ? ofNodes.get(stop) : 0;
    }
}
