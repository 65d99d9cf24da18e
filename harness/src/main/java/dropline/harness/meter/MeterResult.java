package dropline.harness.meter;

import dropline.bus.copper.CopperFault;
import dropline.bus.copper.Meter;
import dropline.bus.copper.Range;
import dropline.bus.copper.Reading;
import dropline.bus.pit.Pit;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What a meter should read on the pairs of a pit, and what was read says.
 *
 * @param pit the pit's name
 * @param pairs the pairs that were asked for
 * @param supplies what supplies should read, a reading for each segment that says what it hangs on; none with a
 *     diagnosis
 * @param diagnosis what the readings taken say; null where none were
 */
public record MeterResult(
        String pit,
        List<Readings> pairs,
        List<SupplyReading> supplies,
        @Nullable Diagnosis diagnosis) {

    /**
     * The readings of one pair, taken where its controller is.
     *
     * @param pair its name
     * @param at what stands there
     */
    public record Readings(String pair, String at, List<Expected> expected) {
        public Readings {
            expected = List.copyOf(expected);
        }
    }

    /**
     * A reading, what it should be, and what it is with each fault.
     *
     * @param faults in the order of their commonness
     */
    public record Expected(Reading reading, Range sound, List<Wrong> faults) {
        public Expected {
            faults = List.copyOf(faults);
        }
    }

    /**
     * What a fault makes of a reading.
     *
     * @param shows whether that differs from what it should be
     */
    public record Wrong(String fault, Range range, boolean shows) {}

    /**
     * What readings say.
     *
     * @param pair the pair they were taken on
     * @param taken as understood
     * @param fits what fits all of them, likeliest first
     * @param isSound whether the likeliest is that nothing is wrong
     * @param nearest where nothing fits, what comes nearest; empty otherwise
     * @param further readings that tell them apart; none where none does, or only one fits
     */
    public record Diagnosis(
            String pair, List<Taken> taken, List<String> fits, boolean isSound, String nearest, List<Further> further) {
        public Diagnosis {
            further = List.copyOf(further);
            taken = List.copyOf(taken);
            fits = List.copyOf(fits);
        }
    }

    /** A reading that was taken, and where. */
    public record Taken(Reading reading, String at, double value) {}

    /**
     * A further reading.
     *
     * @param ranges what it would be, in the order of what fits
     */
    public record Further(Reading reading, String at, List<Range> ranges) {
        public Further {
            ranges = List.copyOf(ranges);
        }
    }

    public MeterResult {
        pairs = List.copyOf(pairs);
        supplies = List.copyOf(supplies);
    }

    /**
     * Works it out.
     *
     * @param segments those that are asked for, by their index
     * @param reads readings as typed: {@code ohms=40}, {@code idle@oil=170 mV}
     */
    public static MeterResult of(Pit pit, List<Integer> segments, List<String> reads) throws MeterException {
        List<MeteredPair> pairs = new ArrayList<>();
        segments.forEach(segment -> pairs.addAll(MeteredPair.of(pit, segment)));
        if (pairs.isEmpty()) {
            throw new MeterException("a board straight on USB has no pair to hold a meter to; choose another segment");
        }
        if (reads.isEmpty()) {
            return new MeterResult(
                    pit.name(),
                    pairs.stream().map(MeterResult::readings).toList(),
                    segments.stream()
                            .flatMap(segment -> SupplyReading.of(pit, segment).stream())
                            .toList(),
                    null);
        }
        TypedReadings typed = TypedReadings.of(reads, pairs);
        return new MeterResult(
                pit.name(), List.of(readings(typed.pair())), List.of(), diagnosis(typed.pair(), typed.taken()));
    }

    private static Readings readings(MeteredPair metered) {
        List<CopperFault> faults = metered.meter().examples();
        List<Expected> expected = metered.readings().stream()
                .map(reading -> expected(metered, reading, faults))
                .toList();
        return new Readings(metered.name(), metered.stop(metered.usualStop()), expected);
    }

    /** Faults of one kind stand in one row. */
    private static Expected expected(MeteredPair metered, Reading reading, List<CopperFault> faults) {
        FaultWords words = new FaultWords(metered);
        Range sound = metered.meter().range(faults.get(0), reading, metered.usualStop());
        Map<CopperFault.Kind, List<CopperFault>> kinds = new EnumMap<>(CopperFault.Kind.class);
        faults.subList(1, faults.size())
                .forEach(fault -> kinds.computeIfAbsent(fault.kind(), kind -> new ArrayList<>())
                        .add(fault));
        List<Wrong> wrong = new ArrayList<>();
        for (List<CopperFault> kind : kinds.values()) {
            Range range = kind.stream()
                    .map(fault -> metered.meter().range(fault, reading, metered.usualStop()))
                    .reduce(Range::and)
                    .orElseThrow();
            wrong.add(new Wrong(words.example(kind), range, range.isApartFrom(sound)));
        }
        return new Expected(reading, sound, wrong);
    }

    private static Diagnosis diagnosis(MeteredPair metered, List<Meter.Taken> taken) {
        Meter meter = metered.meter();
        FaultWords words = new FaultWords(metered);
        List<Meter.Suspect> suspects = meter.suspects(taken);
        List<Further> further = meter.further(suspects, taken).stream()
                .map(f -> new Further(f.reading(), metered.stop(f.stop()), f.ranges()))
                .toList();
        return new Diagnosis(
                metered.name(),
                taken.stream()
                        .map(one -> new Taken(one.reading(), metered.stop(one.stop()), one.value()))
                        .toList(),
                suspects.stream().map(suspect -> words.of(suspect.faults())).toList(),
                !suspects.isEmpty() && suspects.get(0).closest().kind() == CopperFault.Kind.NOTHING,
                suspects.isEmpty() ? words.of(meter.nearest(taken).faults().subList(0, 1)) : "",
                further);
    }
}
