package dropline.harness.describe;

import dropline.harness.describe.RecordingSummary.Pause;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.HdrHistogram.Histogram;

/** Takes in the instants of states and finds how far apart they usually are, and where they are much further. */
final class PauseFold {
    private static final int LISTED = 3;
    private static final int TIMES_THE_USUAL = 5;
    private static final int DIGITS = 3;

    private final Histogram periods = new Histogram(DIGITS);
    private final List<Pause> longest = new ArrayList<>();
    private long states;
    private long last;

    void take(long nanos) {
        if (states++ > 0) {
            long period = nanos - last;
            periods.recordValue(period);
            if (longest.size() < LISTED || period > longest.get(LISTED - 1).lastsNanos()) {
                longest.add(new Pause(last, period));
                longest.sort(Comparator.comparingLong(Pause::lastsNanos).reversed());
                longest.subList(Math.min(LISTED, longest.size()), longest.size())
                        .clear();
            }
        }
        last = nanos;
    }

    long states() {
        return states;
    }

    long periodNanos() {
        return periods.getTotalCount() == 0 ? 0 : periods.getValueAtPercentile(50);
    }

    private long usualAtMost() {
        return TIMES_THE_USUAL * periodNanos();
    }

    /** How many are much longer than usual. */
    long count() {
        return periods.getTotalCount() == 0 || periods.getMaxValue() <= usualAtMost()
                ? 0
                : periods.getCountBetweenValues(
                        periods.highestEquivalentValue(usualAtMost()) + 1, periods.getMaxValue());
    }

    /** The longest of those, longest first; counted from an instant. */
    List<Pause> longest(long fromNanos) {
        return longest.stream()
                .filter(pause -> pause.lastsNanos() > usualAtMost())
                .map(pause -> new Pause(pause.atNanos() - fromNanos, pause.lastsNanos()))
                .toList();
    }
}
