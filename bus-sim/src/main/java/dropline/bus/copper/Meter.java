package dropline.bus.copper;

import dropline.bus.pit.Cable;
import dropline.bus.rule.Unit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What a multimeter should read on a pair, and what a reading says about it. */
public final class Meter {
    /** Resistors to 5 % and a meter to 1 %. */
    private static final double OHMS_OFF = 0.06;

    /** Two kinds of resistors and a supply, to 5 % each, which seldom all add up, and a meter to 1 %. */
    private static final double VOLTS_OFF = 0.12;

    /** The leads and the last digit. */
    private static final double LEAST_OHMS = 0.5;

    private static final double LEAST_VOLTS = 0.002;

    /** Beyond this, a meter shows nothing; ohm. */
    private static final double MOST_OHMS = 2e7;

    /** A transceiver that hardly loads, against what it may. */
    private static final double HARDLY = 0.01;

    private final Pair pair;
    private final Circuit sound;

    /** A meter for a pair as it is described, or taken for fitted. */
    public Meter(Pair pair) {
        this.pair = pair;
        this.sound = Circuit.of(pair);
    }

    /**
     * A reading that was taken.
     *
     * @param stop where
     * @param value in ohm or volts
     */
    public record Taken(Reading reading, int stop, double value) {}

    /**
     * What fits what was read.
     *
     * @param faults those of one kind that fit, the closest first
     * @param distance of the closest one from the middle of what it may read, 0 to 1
     */
    public record Suspect(List<CopperFault> faults, double distance) {
        public Suspect {
            faults = List.copyOf(faults);
        }

        /** The closest. */
        public CopperFault closest() {
            return faults.get(0);
        }
    }

    /**
     * A further reading, and what each suspect would make of it.
     *
     * @param ranges in the order of the suspects
     */
    public record Further(Reading reading, int stop, List<Range> ranges) {
        public Further {
            ranges = List.copyOf(ranges);
        }
    }

    /** The stops at which it can be held to the pair, along the cable. */
    public List<Integer> stops() {
        return sound.stops();
    }

    /** Whether bias can be unplugged, so that resistance is read with it and without. */
    public boolean hasBiasToUnplug() {
        return sound.biases().stream().anyMatch(bias -> !bias.own());
    }

    /** One fault of each kind, nothing wrong first. */
    public List<CopperFault> examples() {
        return CopperFault.examples(pair, sound);
    }

    /** What a reading at a stop may be with a fault. */
    public Range range(CopperFault fault, Reading reading, int stop) {
        return new Faulty(fault).range(reading, stop);
    }

    /** Those that fit all that was read, likeliest first: the close before the less close, then the commoner. */
    public List<Suspect> suspects(List<Taken> taken) {
        return grouped(taken, 1);
    }

    /** The one kind that comes closest, where none fits. */
    public Suspect nearest(List<Taken> taken) {
        return grouped(taken, Double.POSITIVE_INFINITY).stream()
                .min(Comparator.comparingDouble(Suspect::distance))
                .orElseThrow();
    }

    private List<Suspect> grouped(List<Taken> taken, double most) {
        Map<CopperFault, Double> distances = new LinkedHashMap<>();
        for (CopperFault fault : CopperFault.all(pair, sound)) {
            Faulty faulty = new Faulty(fault);
            double distance = taken.stream()
                    .mapToDouble(one -> faulty.range(one.reading(), one.stop()).distance(one.value()))
                    .max()
                    .orElseThrow();
            if (distance <= most) {
                distances.put(fault, distance);
            }
        }
        Map<CopperFault.Kind, List<CopperFault>> kinds = new EnumMap<>(CopperFault.Kind.class);
        distances.keySet().stream()
                .sorted(Comparator.comparingDouble(distances::get))
                .forEach(fault -> kinds.computeIfAbsent(fault.kind(), kind -> new ArrayList<>())
                        .add(fault));
        return kinds.values().stream()
                .map(faults -> new Suspect(faults, distances.getOrDefault(faults.get(0), 0.0)))
                .sorted(Comparator.comparing((Suspect suspect) -> suspect.distance() > 0.5))
                .toList();
    }

    /**
     * Further readings that tell the suspects apart, each the one that tells most of those that the ones before it
     * leave alike; at the stops where readings were taken, the controller or an end. None where no reading helps.
     */
    public List<Further> further(List<Suspect> suspects, List<Taken> taken) {
        List<Further> open = readings(suspects, taken);
        List<Further> chosen = new ArrayList<>();
        Alike alike = Alike.all(suspects.size());
        Optional<Further> best = alike.best(open);
        while (best.isPresent()) {
            chosen.add(best.get());
            alike = alike.after(best.get());
            best = alike.best(open);
        }
        return List.copyOf(chosen);
    }

    private List<Further> readings(List<Suspect> suspects, List<Taken> taken) {
        List<Faulty> faults =
                suspects.stream().map(suspect -> new Faulty(suspect.closest())).toList();
        List<Integer> places = new ArrayList<>(taken.stream().map(Taken::stop).toList());
        places.add(Cable.CONTROLLER);
        places.addAll(pair.ends());
        List<Further> readings = new ArrayList<>();
        for (int stop : places.stream().distinct().toList()) {
            for (Reading reading : Reading.values()) {
                if (taken.stream().noneMatch(one -> one.reading() == reading && one.stop() == stop)) {
                    List<Range> ranges = faults.stream()
                            .map(fault -> fault.range(reading, stop))
                            .toList();
                    readings.add(new Further(reading, stop, ranges));
                }
            }
        }
        return readings;
    }

    /** The pair with a fault, with loads at their most, by both models, and at hardly anything. */
    private final class Faulty {
        private final CopperFault fault;
        private final Map<Reading, List<PairNetwork>> networks = new EnumMap<>(Reading.class);

        Faulty(CopperFault fault) {
            this.fault = fault;
        }

        Range range(Reading read, int stop) {
            Reading reading = fault.instead(read);
            List<PairNetwork> made = networks.computeIfAbsent(
                    reading == Reading.OHMS ? Reading.OHMS : Reading.IDLE, kind -> solved(reading));
            double first = limited(reading, reading.of(made.get(0), stop));
            Range range = new Range(first, first);
            for (PairNetwork network : made) {
                range = range.and(limited(reading, reading.of(network, stop)));
            }
            Range turned = fault.turns(reading) ? range.turned() : range;
            return reading.unit() == Unit.OHMS
                    ? turned.wider(OHMS_OFF, LEAST_OHMS)
                    : turned.wider(VOLTS_OFF, LEAST_VOLTS);
        }

        private double limited(Reading reading, double value) {
            return reading.unit() == Unit.OHMS ? Math.min(value, MOST_OHMS) : value;
        }

        private List<PairNetwork> solved(Reading reading) {
            Circuit circuit = reading.taken(fault.on(sound));
            Circuit light = circuit.withLoads(circuit.loads().stream()
                    .map(load -> new Circuit.Load(load.stop(), load.unitLoad() * HARDLY))
                    .toList());
            return List.of(
                    new PairNetwork(circuit, LoadModel.LINE_TO_LINE, GroundVolts.UNKNOWN),
                    new PairNetwork(circuit, LoadModel.LINE_TO_GROUND, GroundVolts.UNKNOWN),
                    new PairNetwork(light, LoadModel.LINE_TO_GROUND, GroundVolts.UNKNOWN));
        }
    }
}
