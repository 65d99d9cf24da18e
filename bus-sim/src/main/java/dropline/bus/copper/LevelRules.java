package dropline.bus.copper;

import dropline.bus.copper.Circuit.Bias;
import dropline.bus.pit.Fitted;
import dropline.bus.rule.Ruling;
import java.util.ArrayList;
import java.util.List;

/** What loads a pair, and what volts are left on it. */
final class LevelRules {
    private final Pair pair;
    private final Circuit circuit;
    private final LoadModel model;
    private final PairNetwork network;
    private final double loads;

    LevelRules(Pair pair, Circuit circuit, GroundVolts grounds, LoadModel model) {
        this.pair = pair;
        this.model = model;
        this.circuit = circuit;
        this.network = new PairNetwork(circuit, model, grounds);
        this.loads =
                Loads.sum(circuit.loads().stream().map(Circuit.Load::unitLoad).toList());
    }

    List<Ruling> rulings() {
        List<Ruling> rulings = new ArrayList<>();
        rulings.add(Ruling.of(
                CopperRule.UNIT_LOADS,
                pair.name(),
                loads,
                Loads.MOST_UNIT_LOADS,
                circuit.loads().size() + " transceivers, the controller's among them"));
        if (mayHaveBias()) {
            rulings.add(withBias());
        }
        rulings.add(rest());
        rulings.add(Ruling.of(
                CopperRule.DRIVEN_VOLTS,
                pair.name(),
                network.leastDriven(),
                CopperRule.THRESHOLD_VOLTS,
                "any board to any other, a zero against the bias, by a driver as weak as allowed; loads "
                        + model.words() + cable()));
        return rulings;
    }

    /** Whether anything is there that holds the pair with resistors. */
    private boolean mayHaveBias() {
        return circuit.biases().stream().anyMatch(bias -> !bias.own() || bias.ohms() <= Pair.WEAKEST_BIAS_OHMS)
                || pair.isWeakBiasStrongTogether();
    }

    private Ruling withBias() {
        double sum = loads + BiasCount.UNIT_LOADS;
        String modbus =
                "; by Modbus's own count (3.4.6) the bias takes the place of " + BiasCount.DEVICES + " devices instead";
        if (isBiasAssumed() && sum > Loads.MOST_UNIT_LOADS && loads <= Loads.MOST_UNIT_LOADS) {
            return Ruling.unknown(
                    CopperRule.UNIT_LOADS_WITH_BIAS,
                    pair.name(),
                    Loads.MOST_UNIT_LOADS,
                    "nobody said whether resistors hold the pair or the receivers are fail-safe; resistors count for "
                            + BiasCount.UNIT_LOADS + ", " + Said.number(sum) + " in all" + modbus);
        }
        return Ruling.of(
                CopperRule.UNIT_LOADS_WITH_BIAS,
                pair.name(),
                sum,
                Loads.MOST_UNIT_LOADS,
                "resistors that hold the pair count for " + BiasCount.UNIT_LOADS + modbus);
    }

    /** Whether the only resistors that hold it are those that the rules want and nobody stated. */
    private boolean isBiasAssumed() {
        return !pair.segment().cable().fitted().bias().stated()
                && circuit.biases().stream().noneMatch(bias -> bias.own() && bias.ohms() <= Pair.WEAKEST_BIAS_OHMS)
                && !pair.isWeakBiasStrongTogether();
    }

    private Ruling rest() {
        double least = circuit.stops().stream().mapToDouble(network::rest).min().orElseThrow();
        if (pair.segment().biased() && !mayHaveBias()) {
            return Ruling.of(
                    CopperRule.REST_VOLTS,
                    pair.name(),
                    least,
                    0,
                    "the pit file says that the pair rests at one and that no resistors hold it, so every receiver has"
                            + " to be fail-safe: one that takes 0 V for a one");
        }
        return Ruling.of(CopperRule.REST_VOLTS, pair.name(), least, CopperRule.THRESHOLD_VOLTS, restBasis());
    }

    private String restBasis() {
        Fitted.BiasResistors stated = pair.segment().cable().fitted().bias();
        String resistors;
        if (circuit.biases().isEmpty()) {
            resistors = "no bias, says the pit file: between two frames nobody knows what a receiver makes of the pair";
        } else if (isBiasAssumed() && pair.segment().biased()) {
            resistors = "bias of 2 x " + stated.ohms() + " ohm to " + Said.number(stated.volts())
                    + " V taken for fitted, since the pit file names none";
        } else {
            resistors = "bias as the pit file has it"
                    + (circuit.biases().stream().anyMatch(Bias::own) ? ", modules' own to 5 V" : "");
        }
        return resistors + "; loads " + model.words() + cable();
    }

    private String cable() {
        return circuit.ohmsPerMetre() > 0 && circuit.spans().stream().noneMatch(span -> Double.isNaN(span.metres()))
                ? ", cable counted"
                : ", the cable's own resistance left out";
    }
}
