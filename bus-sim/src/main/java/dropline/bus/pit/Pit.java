package dropline.bus.pit;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The whole cockpit.
 *
 * @param name for people
 * @param statePeriodNanos the host's state period, ns; 0 where every row of the recording is a state
 * @param load a described load to simulate in place of a recording, if any
 * @param signals in the order under which the rest of the description numbers them
 * @param segments in the order in which their traces are merged
 */
public record Pit(
        String name, long statePeriodNanos, @Nullable Load load, List<Signal> signals, List<Segment> segments) {

    /**
     * A load without a recording: at every period, first at one period, this many signals change, taken in turn.
     *
     * @param periodNanos above 0
     * @param changesPerState 0 or more
     */
    public record Load(long periodNanos, int changesPerState) {
        public Load {
            if (periodNanos <= 0 || changesPerState < 0) {
                throw new IllegalArgumentException("a load needs a period above 0 and changes of at least 0: period="
                        + periodNanos + " changes=" + changesPerState);
            }
        }
    }

    public Pit {
        signals = List.copyOf(signals);
        segments = List.copyOf(segments);
        if (statePeriodNanos < 0) {
            throw new IllegalArgumentException("state period must not be negative: nanos=" + statePeriodNanos);
        }
    }
}
