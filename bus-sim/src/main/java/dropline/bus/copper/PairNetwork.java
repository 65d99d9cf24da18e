package dropline.bus.copper;

import dropline.bus.copper.Circuit.Bias;
import dropline.bus.copper.Circuit.Joint;
import dropline.bus.copper.Circuit.Load;
import dropline.bus.copper.Circuit.Terminator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
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
        cable(circuit);
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

    /**
     * Both wires, stop by stop, so that points that have to do with each other are close. Stops with nothing between
     * them are one point.
     */
    private void cable(Circuit circuit) {
        List<Span> spans = circuit.spans();
        int start = spans.isEmpty() ? circuit.stops().get(0) : spans.get(0).from();
        d1.put(start, network.point());
        d0.put(start, network.point());
        for (int s = 0; s < spans.size(); s++) {
            Span span = spans.get(s);
            Joint joint = circuit.joints().get(s);
            double metres = Double.isNaN(span.metres()) ? 0 : span.metres();
            d1.put(span.to(), beyond(d1(span.from()), metres * circuit.ohmsPerMetre() + joint.d1Ohms()));
            d0.put(span.to(), beyond(d0(span.from()), metres * circuit.ohmsPerMetre() + joint.d0Ohms()));
        }
    }

    private int beyond(int point, double ohms) {
        if (ohms == 0) {
            return point;
        }
        int next = network.point();
        network.resistor(point, next, ohms);
        return next;
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

    /** What one ampere into D1 and out of D0 at a place adds to every point, V; so many ohm. */
    private double[] perAmpere(Place place) {
        double[] amps = new double[network.points()];
        amps[place.d1] += 1;
        amps[place.d0] -= 1;
        double[] volts = factored.with(amps);
        for (int point = 0; point < volts.length; point++) {
            volts[point] -= atRest[point];
        }
        return volts;
    }

    /** What a meter that measures resistance sees between D1 and D0 at a stop, ohm. */
    double ohms(int stop) {
        Place place = new Place(d1(stop), d0(stop));
        return place.across(perAmpere(place));
    }

    /**
     * The least that any stop is given of a zero, D0 above D1, whoever drives it, V. A zero is the harder one, since
     * bias works against it. A driver that keeps to the standard makes at least 1.5 V across 54 ohm (TI SLLA628); on a
     * heavier load it is taken to give the current of that and no more, on a lighter one the 1.5 V and no more.
     */
    double leastDriven() {
        List<Place> places = places();
        double least = Double.POSITIVE_INFINITY;
        for (Place driver : places) {
            double[] volts = perAmpere(driver);
            double amps =
                    Math.min(DRIVER_VOLTS / DRIVER_OHMS, (DRIVER_VOLTS + driver.across(atRest)) / driver.across(volts));
            for (Place receiver : places) {
                least = Math.min(least, amps * receiver.across(volts) - receiver.across(atRest));
            }
        }
        return least;
    }

    /** Where stops are; those with nothing between them are at one place. */
    private List<Place> places() {
        Set<Place> places = new LinkedHashSet<>();
        d1.forEach((stop, point) -> places.add(new Place(point, d0(stop))));
        return List.copyOf(places);
    }

    /** A point of each wire. */
    private record Place(int d1, int d0) {
        double across(double[] volts) {
            return volts[d1] - volts[d0];
        }
    }

    /** What a driver makes at least (TI SLLA628, transmitter section), V across {@link #DRIVER_OHMS}. */
    static final double DRIVER_VOLTS = 1.5;

    /**
     * The load it makes that across, ohm; a figure of the standard. What is often said to be behind it, two terminators
     * and 32 unit loads, comes to 51.7 or 55.6 ohm.
     */
    static final double DRIVER_OHMS = 54;
}
