package dropline.harness.pitfile;

import dropline.bus.pit.Cable;
import dropline.bus.pit.Fitted;
import dropline.bus.pit.Fitting.PairLoad;
import dropline.bus.pit.Fitting.Reach;
import dropline.bus.pit.Wire;
import dropline.bus.supply.Conductor;
import dropline.harness.yaml.Tree;
import java.util.List;
import java.util.Optional;

/** Makes what direct current meets on a segment's pair, from groups without problems. */
final class PairBuilder {
    /** In place of the stops at which resistors are: there are none. */
    static final String NONE = "none";

    private static final double A_THOUSAND = 1000;

    /** A pair's own current does not warm it. */
    private static final double CELSIUS = 20;

    private PairBuilder() {}

    static Wire wire(Block segment) {
        Block cable = segment.blockOrEmpty(PairKeys.CABLE);
        return new Wire(
                cable.get(PairKeys.WIRE)
                        .map(gauge -> Conductor.ohmsPerKilometre(gauge, CELSIUS) / A_THOUSAND)
                        .orElse(Double.NaN),
                cable.value(PairKeys.IMPEDANCE),
                metres(cable, PairKeys.STEP),
                metres(cable, PairKeys.STUB),
                cable.get(PairKeys.COMMON).orElse(Wire.Common.UNSTATED));
    }

    static Reach reach(Block node) {
        return new Reach(metres(node, PairKeys.AFTER), metres(node, PairKeys.NODE_STUB));
    }

    private static double metres(Block block, Key<Long> key) {
        return block.get(key).map(millimetres -> millimetres / A_THOUSAND).orElse(Double.NaN);
    }

    /** @param nodes names of the segment's nodes, in its order */
    static Fitted fitted(Block segment, List<String> nodes) {
        Block controller = segment.blockOrEmpty(BusKeys.CONTROLLER);
        return new Fitted(
                load(controller.blockOrEmpty(BusKeys.CONTROLLER_TRANSCEIVER)),
                segment.block(PairKeys.TERMINATORS)
                        .map(block -> new Fitted.Terminators(
                                true, stops(block, nodes), Math.toIntExact(block.value(PairKeys.TERMINATOR_OHMS))))
                        .orElse(Fitted.Terminators.UNSTATED),
                segment.block(PairKeys.BIAS_RESISTORS)
                        .map(block -> new Fitted.BiasResistors(
                                true,
                                stops(block, nodes),
                                Math.toIntExact(block.value(PairKeys.BIAS_OHMS)),
                                block.value(PairKeys.BIAS_VOLTS) / A_THOUSAND))
                        .orElse(Fitted.BiasResistors.UNSTATED));
    }

    private static List<Integer> stops(Block resistors, List<String> nodes) {
        return areNone(resistors)
                ? List.of()
                : resistors.value(PairKeys.AT).stream()
                        .map(Tree.Scalar::text)
                        .map(name -> nodes.contains(name) ? nodes.indexOf(name) : Cable.CONTROLLER)
                        .toList();
    }

    /** Whether resistors are said not to be there. */
    static boolean areNone(Block resistors) {
        Optional<List<Tree.Scalar>> at = resistors.written(PairKeys.AT);
        return at.isPresent() && at.get().size() == 1 && at.get().get(0).text().equals(NONE);
    }

    /** A transceiver as the pair meets it. */
    static PairLoad load(Block chip) {
        return new PairLoad(
                chip.written(BusKeys.LIKE).map(Tree.Scalar::text).orElse(""),
                chip.get(PairKeys.UNIT_LOAD).orElse(1.0),
                Math.toIntExact(chip.get(PairKeys.OWN_TERMINATOR).orElse(0L)),
                Math.toIntExact(chip.get(PairKeys.OWN_BIAS).orElse(0L)),
                chip.get(PairKeys.EDGE).orElse(0L));
    }
}
