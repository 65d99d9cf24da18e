package dropline.bus.copper;

import dropline.bus.copper.Circuit.Bias;
import dropline.bus.copper.Circuit.Joint;
import dropline.bus.copper.Circuit.Load;
import dropline.bus.copper.Circuit.Terminator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** A pair as a network of resistors: what direct voltages stand on it, and what resistance it shows. */
final class PairNetwork {
    private final Network network = new Network();
    private final Map<Integer, Integer> d1 = new TreeMap<>();
    private final Map<Integer, Integer> d0 = new TreeMap<>();
    private final Network.Factored factored;
    private final double[] atRest;

    /**
     * @param model where the transceivers' loads lie
     * @param grounds what each board's common lies at
     */
    PairNetwork(Circuit circuit, LoadModel model, GroundVolts grounds) {
        cable(circuit, d1, Joint::d1Ohms);
        cable(circuit, d0, Joint::d0Ohms);
        for (Load load : circuit.loads()) {
            load(load, model, grounds.at(load.stop()));
        }
        for (Terminator terminator : circuit.terminators()) {
            network.resistor(d1(terminator.stop()), d0(terminator.stop()), terminator.ohms());
        }
        for (Bias bias : circuit.biases()) {
            double common = grounds.at(bias.stop());
            network.tie(d1(bias.stop()), common + bias.volts(), bias.ohms());
            network.tie(d0(bias.stop()), common, bias.ohms());
        }
        factored = network.factored();
        atRest = factored.atRest();
    }

    /** What is in the way in one of the two wires, ohm. */
    @FunctionalInterface
    private interface Way {
        double ohms(Joint joint);
    }

    /** One of the two wires. Stops with nothing between them are one point. */
    private void cable(Circuit circuit, Map<Integer, Integer> points, Way way) {
        List<Span> spans = circuit.spans();
        int start = spans.isEmpty() ? circuit.stops().get(0) : spans.get(0).from();
        points.put(start, network.point());
        for (int s = 0; s < spans.size(); s++) {
            Span span = spans.get(s);
            double metres = Double.isNaN(span.metres()) ? 0 : span.metres();
            double ohms =
                    metres * circuit.ohmsPerMetre() + way.ohms(circuit.joints().get(s));
            int from = point(points, span.from());
            int to = ohms == 0 ? from : network.point();
            points.put(span.to(), to);
            if (ohms > 0) {
                network.resistor(from, to, ohms);
            }
        }
    }

    private void load(Load load, LoadModel model, double common) {
        double ohms = Loads.ohms(load.unitLoad());
        switch (model) {
            case LINE_TO_GROUND -> {
                network.tie(d1(load.stop()), common, ohms);
                network.tie(d0(load.stop()), common, ohms);
            }
            case LINE_TO_LINE -> network.resistor(d1(load.stop()), d0(load.stop()), ohms);
        }
    }

    private static int point(Map<Integer, Integer> points, int stop) {
        Integer point = points.get(stop);
        if (point == null) {
            throw new IllegalArgumentException("a stop must be on the pair: stop=" + stop);
        }
        return point;
    }

    private int d1(int stop) {
        return point(d1, stop);
    }

    private int d0(int stop) {
        return point(d0, stop);
    }

    /** D1 above D0 at a stop while nobody speaks, V. */
    double rest(int stop) {
        return atRest[d1(stop)] - atRest[d0(stop)];
    }

    /** D1 against the common of all, while nobody speaks, V. */
    double restOfD1(int stop) {
        return atRest[d1(stop)];
    }

    /** D0 against the common of all, while nobody speaks, V. */
    double restOfD0(int stop) {
        return atRest[d0(stop)];
    }

    /** What one ampere into D1 and out of D0 at a stop adds to every point, V; so many ohm. */
    private double[] perAmpere(int stop) {
        double[] amps = new double[network.points()];
        amps[d1(stop)] += 1;
        amps[d0(stop)] -= 1;
        double[] volts = factored.with(amps);
        for (int point = 0; point < volts.length; point++) {
            volts[point] -= atRest[point];
        }
        return volts;
    }

    /** What a meter that measures resistance sees between D1 and D0 at a stop, ohm. */
    double ohms(int stop) {
        double[] volts = perAmpere(stop);
        return volts[d1(stop)] - volts[d0(stop)];
    }

    /**
     * The least that any stop is given of a zero, D0 above D1, whoever drives it, V. A zero is the harder one, since
     * bias works against it. A driver that keeps to the standard makes at least 1.5 V across 54 ohm (TI SLLA628); on a
     * heavier load it is taken to give the current of that and no more, on a lighter one the 1.5 V and no more.
     */
    double leastDriven() {
        double least = Double.POSITIVE_INFINITY;
        for (int driver : d1.keySet()) {
            double[] volts = perAmpere(driver);
            double amps = Math.min(
                    DRIVER_VOLTS / DRIVER_OHMS,
                    (DRIVER_VOLTS + rest(driver)) / (volts[d1(driver)] - volts[d0(driver)]));
            for (int receiver : d1.keySet()) {
                double zero = amps * (volts[d1(receiver)] - volts[d0(receiver)]) - rest(receiver);
                least = Math.min(least, zero);
            }
        }
        return least;
    }

    /** What a driver makes at least (TI SLLA628, transmitter section), V across {@link #DRIVER_OHMS}. */
    static final double DRIVER_VOLTS = 1.5;

    /**
     * The load it makes that across, ohm; a figure of the standard. What is often said to be behind it, two terminators
     * and 32 unit loads, comes to 51.7 or 55.6 ohm.
     */
    static final double DRIVER_OHMS = 54;
}
