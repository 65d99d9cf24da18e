package dropline.bus.copper;

import dropline.bus.copper.Circuit.Terminator;
import dropline.bus.pit.Fitted;
import dropline.bus.rule.Ruling;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** Terminators and bias: how many, and where. */
final class ResistorRules {
    private final Pair pair;
    private final Circuit circuit;
    private final Fitted fitted;

    ResistorRules(Pair pair, Circuit circuit) {
        this.pair = pair;
        this.circuit = circuit;
        this.fitted = pair.segment().cable().fitted();
    }

    List<Ruling> rulings() {
        List<Ruling> rulings = new ArrayList<>();
        List<Terminator> all = circuit.terminators();
        List<Integer> places = all.stream().map(Terminator::stop).toList();
        String basis = fitted.terminators().stated()
                ? "as the pit file has it, modules' own included"
                : "modules' own, and at an end without one "
                        + fitted.terminators().ohms() + " ohm taken for fitted, since the pit file names none";
        rulings.add(Ruling.of(CopperRule.TERMINATORS, pair.name(), all.size(), CopperRule.ENDS, basis));
        long ends = pair.ends().stream().filter(places::contains).count();
        rulings.add(Ruling.of(CopperRule.ENDS_TERMINATED, pair.name(), ends, CopperRule.ENDS, basis));
        long elsewhere = places.stream().filter(stop -> !pair.isEnd(stop)).count();
        rulings.add(Ruling.of(CopperRule.TERMINATORS_ELSEWHERE, pair.name(), elsewhere, 0, basis));
        if (ends > 0) {
            rulings.add(mismatch());
        }
        rulings.add(Ruling.of(
                CopperRule.BIAS_PLACES,
                pair.name(),
                biasPlaces(),
                1,
                "where resistors of " + Pair.WEAKEST_BIAS_OHMS + " ohm or less hold the pair; weaker ones count as a"
                        + " place once they come to as much together"));
        return rulings;
    }

    /** The worse of the two ends: what part of a wave's height a resistor sends back is (R - Z) / (R + Z). */
    private Ruling mismatch() {
        double impedance = pair.segment().cable().wire().impedanceOhms();
        double worst = 0;
        for (int end : pair.ends()) {
            double siemens = circuit.terminators().stream()
                    .filter(terminator -> terminator.stop() == end)
                    .mapToDouble(terminator -> 1 / terminator.ohms())
                    .sum();
            if (siemens > 0) {
                double ohms = 1 / siemens;
                worst = Math.max(worst, Math.abs(ohms - impedance) / (ohms + impedance));
            }
        }
        return Ruling.of(
                CopperRule.TERMINATOR_MISMATCH,
                pair.name(),
                worst,
                CopperRule.MOST_REFLECTED,
                "against a cable of " + Said.number(impedance) + " ohm");
    }

    private int biasPlaces() {
        Set<Integer> places = new TreeSet<>();
        for (Circuit.Bias bias : circuit.biases()) {
            if (!bias.own() || bias.ohms() <= Pair.WEAKEST_BIAS_OHMS) {
                places.add(bias.stop());
            }
        }
        return places.size() + (pair.isWeakBiasStrongTogether() ? 1 : 0);
    }
}
