package dropline.bus.copper;

import dropline.bus.copper.Circuit.Bias;
import dropline.bus.copper.Circuit.Joint;
import dropline.bus.copper.Circuit.Load;
import dropline.bus.copper.Circuit.Terminator;
import dropline.bus.pit.Cable;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * One thing that is wrong with the copper of a pair, or nothing.
 *
 * @param kind what
 * @param at the stop it is at, or the last one before it on the cable
 * @param beyond for what lies between two stops, the second; else {@code at}
 * @param ohms of a joint; 0 for all else
 * @param inD0 for what lies in one wire, whether that is D0 rather than D1
 */
public record CopperFault(Kind kind, int at, int beyond, double ohms, boolean inD0) {
    /** A common terminator, ohm. */
    private static final double TERMINATOR_OHMS = 120;

    /** Two wires that touch, ohm. */
    private static final double TOUCHING_OHMS = 0.2;

    private static final double SHOWN_JOINT_OHMS = 100;

    /** What can be wrong, the commoner before the rarer (common practice: nobody has counted). */
    public enum Kind {
        NOTHING,
        /** A terminator is not there, or not in contact. */
        TERMINATOR_MISSING,
        /** One more than there should be. */
        TERMINATOR_EXTRA,
        /** Every board's module carries one. */
        TERMINATOR_ON_EVERY_MODULE,
        NO_TERMINATOR,
        BIAS_MISSING,
        /** D1 and D0 are exchanged where the meter is. */
        SWAPPED,
        /** The resistors that hold the pair are there twice. */
        BIAS_DOUBLED,
        /** A plug or a screw that hardly conducts, in one wire. */
        BAD_JOINT,
        /** A broken wire. */
        OPEN_WIRE,
        /** D1 and D0 touch. */
        SHORTED
    }

    private static CopperFault at(Kind kind, int stop) {
        return new CopperFault(kind, stop, stop, 0, false);
    }

    private static CopperFault in(Span span, Kind kind, double ohms, boolean inD0) {
        return new CopperFault(kind, span.from(), span.to(), ohms, inD0);
    }

    /** Every single fault that a pair can have, nothing wrong first. */
    static List<CopperFault> all(Pair pair, Circuit circuit) {
        List<CopperFault> faults = new ArrayList<>(anywhere(pair, circuit));
        for (Span span : circuit.spans()) {
            for (boolean inD0 : new boolean[] {false, true}) {
                DoubleStream.of(JOINTS).forEach(ohms -> faults.add(in(span, Kind.BAD_JOINT, ohms, inD0)));
                faults.add(in(span, Kind.OPEN_WIRE, 0, inD0));
            }
        }
        return faults;
    }

    /** One of each kind, to show what it reads: what lies on the cable lies in its middle. */
    static List<CopperFault> examples(Pair pair, Circuit circuit) {
        List<CopperFault> faults = new ArrayList<>(anywhere(pair, circuit));
        if (!circuit.spans().isEmpty()) {
            Span middle = circuit.spans().get(circuit.spans().size() / 2);
            faults.add(in(middle, Kind.BAD_JOINT, SHOWN_JOINT_OHMS, false));
            faults.add(in(middle, Kind.OPEN_WIRE, 0, false));
        }
        return faults;
    }

    /** Six a decade, from what a meter notices to what is as good as open; ohm. */
    private static final double[] JOINTS = IntStream.rangeClosed(2, 26)
            .mapToDouble(step -> Math.rint(10 * StrictMath.pow(10, step / 6.0)) / 10)
            .toArray();

    private static List<CopperFault> anywhere(Pair pair, Circuit circuit) {
        List<CopperFault> faults = new ArrayList<>(List.of(at(Kind.NOTHING, Cable.CONTROLLER)));
        circuit.terminators().stream()
                .map(Terminator::stop)
                .distinct()
                .forEach(stop -> faults.add(at(Kind.TERMINATOR_MISSING, stop)));
        int middle = circuit.stops().get(circuit.stops().size() / 2);
        faults.add(at(Kind.TERMINATOR_EXTRA, middle));
        faults.add(at(Kind.TERMINATOR_ON_EVERY_MODULE, middle));
        faults.add(at(Kind.NO_TERMINATOR, middle));
        circuit.biases().stream()
                .filter(bias -> !bias.own() || pair.isBiasedAt(bias.stop()))
                .map(Bias::stop)
                .distinct()
                .limit(1)
                .forEach(stop -> {
                    faults.add(at(Kind.BIAS_MISSING, stop));
                    faults.add(at(Kind.SWAPPED, stop));
                    faults.add(at(Kind.BIAS_DOUBLED, stop));
                });
        faults.add(at(Kind.SHORTED, middle));
        return faults;
    }

    /** The pair with this wrong. Exchanged wires are not there: they exchange what is read. */
    Circuit on(Circuit circuit) {
        return switch (kind) {
            case NOTHING, SWAPPED -> circuit;
            case TERMINATOR_MISSING ->
                circuit.withTerminators(circuit.terminators().stream()
                        .filter(terminator -> terminator.stop() != at)
                        .toList());
            case TERMINATOR_EXTRA -> circuit.withTerminators(with(circuit, new Terminator(at, TERMINATOR_OHMS)));
            case TERMINATOR_ON_EVERY_MODULE -> circuit.withTerminators(onEveryModule(circuit));
            case NO_TERMINATOR -> circuit.withTerminators(List.of());
            case BIAS_MISSING ->
                circuit.withBiases(circuit.biases().stream()
                        .filter(bias -> bias.stop() != at)
                        .toList());
            case BIAS_DOUBLED ->
                circuit.withBiases(circuit.biases().stream()
                        .flatMap(bias -> bias.stop() == at ? Stream.of(bias, bias) : Stream.of(bias))
                        .toList());
            case BAD_JOINT -> circuit.with(span(circuit), joint(ohms));
            case OPEN_WIRE -> circuit.with(span(circuit), joint(Double.POSITIVE_INFINITY));
            case SHORTED -> circuit.withTerminators(with(circuit, new Terminator(at, TOUCHING_OHMS)));
        };
    }

    private Joint joint(double inOne) {
        return inD0 ? new Joint(0, inOne) : new Joint(inOne, 0);
    }

    private int span(Circuit circuit) {
        return IntStream.range(0, circuit.spans().size())
                .filter(s -> circuit.spans().get(s).from() == at
                        && circuit.spans().get(s).to() == beyond)
                .findFirst()
                .orElseThrow();
    }

    private static List<Terminator> with(Circuit circuit, Terminator further) {
        List<Terminator> all = new ArrayList<>(circuit.terminators());
        all.add(further);
        return all;
    }

    private static List<Terminator> onEveryModule(Circuit circuit) {
        List<Integer> there =
                circuit.terminators().stream().map(Terminator::stop).toList();
        List<Terminator> all = new ArrayList<>(circuit.terminators());
        circuit.loads().stream()
                .map(Load::stop)
                .filter(stop -> stop != Cable.CONTROLLER && !there.contains(stop))
                .forEach(stop -> all.add(new Terminator(stop, TERMINATOR_OHMS)));
        return all;
    }

    /** The reading that one gets in place of another where the wires are exchanged at the meter. */
    Reading instead(Reading reading) {
        if (kind != Kind.SWAPPED) {
            return reading;
        }
        return switch (reading) {
            case D1 -> Reading.D0;
            case D0 -> Reading.D1;
            case OHMS, OHMS_BIASED, IDLE -> reading;
        };
    }

    /** Whether the meter shows it the other way round. */
    boolean turns(Reading reading) {
        return kind == Kind.SWAPPED && reading == Reading.IDLE;
    }
}
