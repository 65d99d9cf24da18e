package dropline.harness.meter;

import dropline.bus.copper.Meter;
import dropline.bus.copper.Pair;
import dropline.bus.copper.Reading;
import dropline.bus.pit.Cable;
import dropline.bus.pit.Pit;
import dropline.harness.copper.Stops;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** A pair that one holds a meter to. */
record MeteredPair(Pit pit, int segment, Pair pair, Meter meter) {

    /** The pairs of a segment. */
    static List<MeteredPair> of(Pit pit, int segment) {
        List<MeteredPair> pairs = new ArrayList<>();
        Pair.of(pit, segment).forEach(pair -> pairs.add(new MeteredPair(pit, segment, pair, new Meter(pair))));
        return pairs;
    }

    String name() {
        return pair.name();
    }

    /** What stands at a stop. */
    String stop(int stop) {
        return Stops.name(pit, segment, stop);
    }

    /** Where the meter is if nobody says. */
    int usualStop() {
        return Cable.CONTROLLER;
    }

    /** The readings there are to take: with bias and without only where some can be unplugged. */
    List<Reading> readings() {
        return Stream.of(Reading.values())
                .filter(reading -> reading != Reading.OHMS_BIASED || meter.hasBiasToUnplug())
                .toList();
    }
}
