package dropline.bus.copper;

import dropline.bus.Pits;
import dropline.bus.pit.Cable;
import dropline.bus.pit.Cable.Arm;
import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.pit.Draw;
import dropline.bus.pit.Fitted;
import dropline.bus.pit.Fitted.BiasResistors;
import dropline.bus.pit.Fitted.Terminators;
import dropline.bus.pit.Fitting;
import dropline.bus.pit.Fitting.PairLoad;
import dropline.bus.pit.Fitting.Reach;
import dropline.bus.pit.Inlet;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Wire;
import dropline.bus.rule.Ruling;
import dropline.protocol.CharacterFormat;
import dropline.protocol.sized.Sized;
import java.util.ArrayList;
import java.util.List;

/** A pit of one segment, of which only the copper matters: as plain as it can be until something is said. */
final class CopperPit {
    static final int HUB = Cable.CONTROLLER;

    /** 24 AWG, 120 ohm, half a metre from board to board, stubs of 5 cm, a third wire. */
    static final Wire SHORT = new Wire(0.0842, 120, 0.5, 0.05, Wire.Common.YES);

    private final List<PairLoad> loads = new ArrayList<>();
    private final List<Reach> reaches = new ArrayList<>();
    private int baud = 250_000;
    private boolean biased = true;
    private PairLoad controller = load(1);
    private Terminators terminators = Terminators.UNSTATED;
    private BiasResistors bias = BiasResistors.UNSTATED;
    private Wire wire = Wire.UNKNOWN;
    private List<List<Integer>> arms = List.of();

    /** A transceiver with edges of 100 ns and no resistors. */
    static PairLoad load(double unitLoad) {
        return new PairLoad("", unitLoad, 0, 0, 100);
    }

    static PairLoad withResistors(int terminatorOhms, int biasOhms) {
        return new PairLoad("", 1, terminatorOhms, biasOhms, 100);
    }

    CopperPit nodes(int count, PairLoad load) {
        for (int n = 0; n < count; n++) {
            node(load, Reach.AS_THE_SEGMENT);
        }
        return this;
    }

    CopperPit node(PairLoad load, Reach reach) {
        loads.add(load);
        reaches.add(reach);
        return this;
    }

    CopperPit controller(PairLoad load) {
        controller = load;
        return this;
    }

    CopperPit baud(int rate) {
        baud = rate;
        return this;
    }

    CopperPit wire(Wire made) {
        wire = made;
        return this;
    }

    CopperPit terminatedAt(Integer... stops) {
        terminators = new Terminators(true, List.of(stops), 120);
        return this;
    }

    CopperPit terminators(int ohms, Integer... stops) {
        terminators = new Terminators(true, List.of(stops), ohms);
        return this;
    }

    CopperPit bias(int ohms, double volts, Integer... stops) {
        bias = new BiasResistors(true, List.of(stops), ohms, volts);
        return this;
    }

    CopperPit withoutBias() {
        biased = false;
        return this;
    }

    CopperPit star(List<List<Integer>> stops) {
        arms = stops;
        return this;
    }

    Pit pit() {
        List<Node> nodes = new ArrayList<>();
        for (PairLoad load : loads) {
            int address = nodes.size() + 1;
            Reach reach = reaches.get(nodes.size());
            nodes.add(new Node(
                    "node " + address,
                    address,
                    1,
                    Pits.profile(100 * Pits.MICRO),
                    List.of(),
                    List.of(),
                    new Fitting("", "", "", "", "", Draw.UNKNOWN, load, Inlet.PLAIN, reach)));
        }
        Segment segment = new Segment(
                "bus",
                baud,
                CharacterFormat.EIGHT_N_ONE,
                new Sized(10, List.of(new Sized.ReplyChoice(10, 1)), 6, 4, 10, 0),
                Pits.controller(StateDelivery.BROADCAST, Pits.MILLI, 0),
                nodes,
                biased,
                cable(nodes.size()));
        return new Pit("pit", 0, null, List.of(), List.of(segment));
    }

    private Cable cable(int nodes) {
        Fitted fitted = new Fitted(controller, terminators, bias);
        if (arms.isEmpty()) {
            Cable chain = Cable.chain(nodes);
            return new Cable(chain.topology(), chain.arms(), wire, fitted);
        }
        List<Arm> made = new ArrayList<>();
        arms.forEach(stops -> made.add(new Arm("arm " + (made.size() + 1), stops)));
        return new Cable(Cable.Topology.STAR, made, wire, fitted);
    }

    Pair pair() {
        return Pair.of(pit(), 0).get(0);
    }

    Circuit circuit() {
        return Circuit.of(pair());
    }

    /** D1 above D0 at the controller, V. */
    double rest(LoadModel model) {
        return new PairNetwork(circuit(), model, GroundVolts.UNKNOWN).rest(HUB);
    }

    /** What one rule comes to. */
    Ruling ruling(CopperRule rule) {
        return ruling(rule, GroundVolts.UNKNOWN);
    }

    Ruling ruling(CopperRule rule, GroundVolts grounds) {
        List<Ruling> found = Copper.rule(pit(), 0, grounds).stream()
                .filter(ruling -> ruling.rule() == rule)
                .toList();
        if (found.size() != 1) {
            throw new AssertionError("one ruling is looked for: rule=" + rule + " found=" + found);
        }
        return found.get(0);
    }
}
