package dropline.scenarios.yardstick;

import java.util.Arrays;
import org.HdrHistogram.Histogram;

/**
 * What is measured of the reference bus by the two models that are not ours: for every lamp its update latency and the
 * age of what it shows, for the wire its time in use, poll cycles and reply gaps. The histograms are as fine as ours.
 */
final class Figures {
    private static final long NONE = -1;

    private final Histogram[] latency = new Histogram[ReferenceBus.LAMPS];
    private final long[] latencySum = new long[ReferenceBus.LAMPS];
    private final long[] latencyMax = new long[ReferenceBus.LAMPS];
    private final long[] oldest = new long[ReferenceBus.LAMPS];
    private final long[] newest = new long[ReferenceBus.LAMPS];
    private final long[] shownState = new long[ReferenceBus.LAMPS];
    private final long[] since = new long[ReferenceBus.LAMPS];
    private final double[] age = new double[ReferenceBus.LAMPS];
    private final long[] agePeak = new long[ReferenceBus.LAMPS];
    private final Histogram cycle = histogram();
    private final long[] gapSum = new long[ReferenceBus.NODES];
    private final long[] answered = new long[ReferenceBus.NODES];
    private long gapMin = Long.MAX_VALUE;
    private long gapMax;
    private long cycleSum;
    private long cycleStart = NONE;
    private long busy;
    private long frames;

    Figures() {
        for (int lamp = 0; lamp < latency.length; lamp++) {
            latency[lamp] = histogram();
        }
        Arrays.fill(oldest, NONE);
        Arrays.fill(since, NONE);
    }

    private static Histogram histogram() {
        return new Histogram(1_000, 4_000_000_000L, 2);
    }

    void changed(int lamp, long atNanos) {
        newest[lamp] = atNanos;
        if (oldest[lamp] == NONE) {
            oldest[lamp] = atNanos;
        }
    }

    void shown(int lamp, long atNanos) {
        long took = atNanos - oldest[lamp];
        latency[lamp].recordValue(took);
        latencySum[lamp] += took;
        latencyMax[lamp] = Math.max(latencyMax[lamp], took);
        oldest[lamp] = NONE;
        integrate(lamp, atNanos);
        shownState[lamp] = newest[lamp];
    }

    /** A lamp that shows what the host's newest state says is as old as that state. */
    void stateSent(long atNanos) {
        for (int lamp = 0; lamp < latency.length; lamp++) {
            if (since[lamp] != NONE && oldest[lamp] == NONE) {
                integrate(lamp, atNanos);
                shownState[lamp] = atNanos;
            }
        }
    }

    private void integrate(int lamp, long untilNanos) {
        if (since[lamp] != NONE) {
            long span = untilNanos - since[lamp];
            long state = shownState[lamp];
            age[lamp] += (double) span * ((since[lamp] - state) + (untilNanos - state)) * 0.5;
            agePeak[lamp] = Math.max(agePeak[lamp], untilNanos - state);
        }
        since[lamp] = untilNanos;
    }

    void frame(long nanos) {
        frames++;
        busy += nanos;
    }

    void answered(int node, long gapNanos) {
        answered[node]++;
        gapSum[node] += gapNanos;
        gapMin = Math.min(gapMin, gapNanos);
        gapMax = Math.max(gapMax, gapNanos);
    }

    void cycleStarted(long atNanos) {
        if (cycleStart != NONE) {
            cycle.recordValue(atNanos - cycleStart);
            cycleSum += atNanos - cycleStart;
        }
        cycleStart = atNanos;
    }

    /** What all three models must agree on. */
    Result result() {
        Histogram all = histogram();
        long sum = 0;
        for (int lamp = 0; lamp < latency.length; lamp++) {
            all.add(latency[lamp]);
            sum += latencySum[lamp];
        }
        return new Result(
                frames,
                (double) sum / all.getTotalCount(),
                all.getValueAtPercentile(99),
                (double) cycleSum / cycle.getTotalCount());
    }

    /** Makes the figures that are not compared count, so that no compiler may leave their sums out. */
    double rest() {
        double rest = busy + gapMin + gapMax;
        for (int lamp = 0; lamp < age.length; lamp++) {
            rest += age[lamp] + agePeak[lamp] + latencyMax[lamp];
        }
        for (int node = 0; node < gapSum.length; node++) {
            rest += (double) gapSum[node] / answered[node];
        }
        return rest;
    }
}
