package dropline.harness.power;

import java.util.List;

/**
 * The currents over a recording.
 *
 * @param recording its name
 * @param points what flowed into each point, by its number
 * @param boards the least volts of each node, by its index in {@link dropline.bus.pit.Layout#nodes()}
 * @param losses what of the recording was left out, a sentence each
 */
public record Flight(
        String recording, long durationNanos, List<Drawn> points, List<Least> boards, List<String> losses) {

    /**
     * What flowed into a point.
     *
     * @param mean A
     * @param p99 what 99 of 100 moments did not exceed, A
     * @param max A
     * @param maxNanos the first moment it did
     * @param curve over time
     */
    public record Drawn(double mean, double p99, double max, long maxNanos, List<Stretch> curve) {
        public Drawn {
            curve = List.copyOf(curve);
        }
    }

    /** A stretch of time and the mean and the most in it, A. */
    public record Stretch(long fromNanos, double mean, double max) {}

    /**
     * The worst that a board's supply did to it; NaN for one on no supply.
     *
     * @param volts the least at its supply terminals, V; 0 if its supply collapsed
     * @param groundVolts by how much its ground was lifted then, V
     */
    public record Least(double volts, long atNanos, double groundVolts) {}

    public Flight {
        points = List.copyOf(points);
        boards = List.copyOf(boards);
        losses = List.copyOf(losses);
    }
}
