package dropline.bus.pit;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.IntStream;

/**
 * How a segment's cable runs. All of it is for those who wire it, except that on a direct one nothing is shared.
 *
 * @param topology its shape
 * @param arms one without a name, or a star's arms, each from the middle outward
 * @param wire what it is made of
 * @param fitted what is on it beside the nodes
 */
public record Cable(Topology topology, List<Arm> arms, Wire wire, Fitted fitted) {
    /** Among an arm's stops, the controller. */
    public static final int CONTROLLER = -1;

    /** The shape of a segment's cable. */
    public enum Topology {
        /** From one board to the next. */
        CHAIN,
        /** Arms that meet at the controller or its hub. */
        STAR,
        /** No pair at all: the one node hangs straight on the adapter, and both may speak at once. */
        DIRECT
    }

    /**
     * A stretch of cable.
     *
     * @param name for people; empty where there is only one
     * @param stops positions in {@link Segment#nodes()} in the order along it; in a chain {@link #CONTROLLER} as well
     */
    public record Arm(String name, List<Integer> stops) {
        public Arm {
            stops = List.copyOf(stops);
        }
    }

    public Cable {
        arms = List.copyOf(arms);
        if (arms.isEmpty() || (topology != Topology.STAR && arms.size() > 1)) {
            throw new IllegalArgumentException(
                    "only a star has several arms: topology=" + topology + " arms=" + arms.size());
        }
    }

    /** One of whose wire and resistors nothing is said. */
    public Cable(Topology topology, List<Arm> arms) {
        this(topology, arms, Wire.UNKNOWN, Fitted.UNSTATED);
    }

    /** A chain that begins at the controller and goes on in the order in which nodes are polled. */
    public static Cable chain(int nodes) {
        return new Cable(
                Topology.CHAIN,
                List.of(new Arm("", IntStream.range(CONTROLLER, nodes).boxed().toList())));
    }

    /** The same made and fitted likewise, but run otherwise. */
    public Cable with(List<Arm> otherArms, Fitted otherFitted) {
        return new Cable(topology, otherArms, wire, otherFitted);
    }

    /** Whether it stops at each of so many nodes once, and in a chain at the controller. */
    boolean reaches(int nodes) {
        List<Integer> stops = new ArrayList<>(
                arms.stream().flatMap(arm -> arm.stops().stream()).toList());
        int first = topology == Topology.STAR ? 0 : CONTROLLER;
        return stops.size() == nodes - first
                && List.copyOf(new TreeSet<>(stops))
                        .equals(IntStream.range(first, nodes).boxed().toList());
    }
}
