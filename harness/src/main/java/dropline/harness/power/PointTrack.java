package dropline.harness.power;

import java.util.ArrayList;
import java.util.List;
import org.HdrHistogram.Histogram;

/**
 * What flows into one point over a run: mean, most with its moment, and a curve in at most {@link #MOST} stretches of
 * equal length; when the run outgrows them, neighbours are joined. A supply that collapses gives nothing.
 */
final class PointTrack {
    static final int MOST = 240;

    private static final long FIRST_STRETCH_NANOS = 250_000_000L;
    private static final long MICRO = 1_000L;

    /** Milliamperes, each counted with the microseconds it lasted. */
    private final Histogram milliamps = new Histogram(1_000_000L, 3);

    private final double[] sums = new double[MOST];
    private final double[] longs = new double[MOST];
    private final double[] maxima = new double[MOST];
    private long stretchNanos = FIRST_STRETCH_NANOS;
    private double sum;
    private double nanos;
    private double max = -1;
    private long maxNanos;

    /** So much flows from now on. */
    void reaches(long atNanos, double amps) {
        if (amps > max) {
            max = amps;
            maxNanos = atNanos;
        }
        if (!Double.isNaN(amps)) {
            int i = stretch(atNanos);
            maxima[i] = Math.max(maxima[i], amps);
        }
    }

    /** So much flowed. */
    void flowed(long fromNanos, long untilNanos, double amps) {
        if (untilNanos <= fromNanos || Double.isNaN(amps)) {
            return;
        }
        sum += amps * (untilNanos - fromNanos);
        nanos += untilNanos - fromNanos;
        milliamps.recordValueWithCount(
                Math.min(1_000_000L, Math.round(amps * 1000)), Math.max(1, (untilNanos - fromNanos) / MICRO));
        stretch(untilNanos);
        long at = fromNanos;
        while (at < untilNanos) {
            int i = stretch(at);
            long end = Math.min(untilNanos, (i + 1) * stretchNanos);
            sums[i] += amps * (end - at);
            longs[i] += end - at;
            maxima[i] = Math.max(maxima[i], amps);
            at = end;
        }
    }

    private int stretch(long atNanos) {
        while (atNanos / stretchNanos >= MOST) {
            for (int i = 0; i < MOST; i++) {
                boolean within = 2 * i < MOST;
                sums[i] = within ? sums[2 * i] + sums[2 * i + 1] : 0;
                longs[i] = within ? longs[2 * i] + longs[2 * i + 1] : 0;
                maxima[i] = within ? Math.max(maxima[2 * i], maxima[2 * i + 1]) : 0;
            }
            stretchNanos *= 2;
        }
        return (int) (atNanos / stretchNanos);
    }

    Flight.Drawn drawn() {
        List<Flight.Stretch> curve = new ArrayList<>();
        for (int i = 0; i < MOST; i++) {
            if (longs[i] > 0) {
                curve.add(new Flight.Stretch(i * stretchNanos, sums[i] / longs[i], maxima[i]));
            }
        }
        double p99 = milliamps.getTotalCount() == 0 ? 0 : milliamps.getValueAtPercentile(99) / 1000.0;
        return new Flight.Drawn(
                nanos == 0 ? 0 : sum / nanos, Math.min(p99, Math.max(0, max)), Math.max(0, max), maxNanos, curve);
    }
}
