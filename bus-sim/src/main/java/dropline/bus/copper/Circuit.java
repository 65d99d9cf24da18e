package dropline.bus.copper;

import dropline.bus.pit.Fitted;
import dropline.bus.pit.Fitting.PairLoad;
import java.util.ArrayList;
import java.util.List;

/**
 * Everything that direct current meets on a pair, as parts. What a module brings itself counts as it stands in the
 * description; what belongs on the pair beside that is taken for fitted where nobody stated it.
 *
 * @param spans the cable, from stop to stop
 * @param joints what is in the way in each span beside the cable itself, in the order of the spans
 * @param loads the transceivers
 * @param terminators resistors across the pair
 * @param biases resistors that hold it at rest
 * @param ohmsPerMetre resistance of one wire; 0 where it is not known, and left out
 */
record Circuit(
        List<Span> spans,
        List<Joint> joints,
        List<Load> loads,
        List<Terminator> terminators,
        List<Bias> biases,
        double ohmsPerMetre) {

    /** A module's own bias goes to the supply of its logic: from memory, 5 V on common modules. */
    private static final double MODULE_VOLTS = 5;

    /** A transceiver's load. */
    record Load(int stop, double unitLoad) {}

    /** A resistor across the pair. */
    record Terminator(int stop, double ohms) {}

    /**
     * A resistor from D1 up to a supply and one from D0 down to common.
     *
     * @param own whether a module carries them, so that they cannot be unplugged
     */
    record Bias(int stop, double ohms, double volts, boolean own) {}

    /** Resistance in the two wires of a span, ohm; endless where one is open. */
    record Joint(double d1Ohms, double d0Ohms) {
        static final Joint SOUND = new Joint(0, 0);
    }

    Circuit {
        spans = List.copyOf(spans);
        joints = List.copyOf(joints);
        loads = List.copyOf(loads);
        terminators = List.copyOf(terminators);
        biases = List.copyOf(biases);
    }

    /** A pair as described, and as the rules want it where the description leaves something open. */
    static Circuit of(Pair pair) {
        Fitted fitted = pair.segment().cable().fitted();
        List<Span> spans = pair.spans();
        List<Load> loads = new ArrayList<>();
        List<Terminator> terminators = new ArrayList<>();
        List<Bias> biases = new ArrayList<>();
        for (int stop : pair.transceivers()) {
            PairLoad load = pair.load(stop);
            loads.add(new Load(stop, load.unitLoad()));
            if (load.terminatorOhms() > 0) {
                terminators.add(new Terminator(stop, load.terminatorOhms()));
            } else if (!fitted.terminators().stated() && pair.isEnd(stop)) {
                terminators.add(new Terminator(stop, fitted.terminators().ohms()));
            }
            if (fitted.terminators().at().contains(stop)) {
                terminators.add(new Terminator(stop, fitted.terminators().ohms()));
            }
            if (load.biasOhms() > 0) {
                biases.add(new Bias(stop, load.biasOhms(), MODULE_VOLTS, true));
            }
            boolean assumed = !fitted.bias().stated() && pair.isBiasedAt(stop) && !holds(load);
            if (assumed || fitted.bias().at().contains(stop)) {
                biases.add(new Bias(stop, fitted.bias().ohms(), fitted.bias().volts(), false));
            }
        }
        double ohmsPerMetre = pair.segment().cable().wire().ohmsPerMetre();
        return new Circuit(
                spans,
                spans.stream().map(span -> Joint.SOUND).toList(),
                loads,
                terminators,
                biases,
                Double.isNaN(ohmsPerMetre) ? 0 : ohmsPerMetre);
    }

    private static boolean holds(PairLoad load) {
        return load.biasOhms() > 0 && load.biasOhms() <= Pair.WEAKEST_BIAS_OHMS;
    }

    /** Every stop, in the order of the loads. */
    List<Integer> stops() {
        return loads.stream().map(Load::stop).toList();
    }

    Circuit withTerminators(List<Terminator> others) {
        return new Circuit(spans, joints, loads, others, biases, ohmsPerMetre);
    }

    Circuit withBiases(List<Bias> others) {
        return new Circuit(spans, joints, loads, terminators, others, ohmsPerMetre);
    }

    Circuit withLoads(List<Load> others) {
        return new Circuit(spans, joints, others, terminators, biases, ohmsPerMetre);
    }

    /** The same with something in the way in one span. */
    Circuit with(int span, Joint joint) {
        List<Joint> others = new ArrayList<>(joints);
        others.set(span, joint);
        return new Circuit(spans, others, loads, terminators, biases, ohmsPerMetre);
    }
}
