package dropline.bus.copper;

import dropline.bus.copper.Meter.Further;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Suspects, two by two, that no reading tells apart yet. */
record Alike(List<Two> twos) {

    /** Two of them, by their positions, the likelier first. */
    record Two(int one, int other) {
        boolean isTold(Further reading) {
            return reading.ranges().get(one).isApartFrom(reading.ranges().get(other));
        }
    }

    static Alike all(int suspects) {
        List<Two> twos = new ArrayList<>();
        for (int one = 0; one < suspects; one++) {
            for (int other = one + 1; other < suspects; other++) {
                twos.add(new Two(one, other));
            }
        }
        return new Alike(twos);
    }

    /** The reading that tells most of them apart, of equals the first; empty where none tells any. */
    Optional<Further> best(List<Further> readings) {
        return readings.stream().max(Comparator.comparingInt(this::told)).filter(reading -> told(reading) > 0);
    }

    /** How many it tells apart; the likeliest from another counts more than any others. */
    private int told(Further reading) {
        return twos.stream()
                .filter(two -> two.isTold(reading))
                .mapToInt(two -> two.one == 0 ? twos.size() : 1)
                .sum();
    }

    Alike after(Further reading) {
        return new Alike(twos.stream().filter(two -> !two.isTold(reading)).toList());
    }
}
