package dropline.harness.verdict;

import dropline.harness.measure.BusMeasure;
import dropline.harness.measure.CycleSeries;
import dropline.harness.measure.SlotMeasure;
import dropline.harness.measure.Times;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Turns what was measured into the figures of the result. */
final class Figures {
    private static final int MOST_BUCKETS = 40;

    private Figures() {}

    static Latency latency(Times times) {
        if (times.count() == 0) {
            return Latency.NONE;
        }
        return new Latency(
                times.count(),
                times.meanNanos(),
                times.percentileNanos(50),
                times.percentileNanos(90),
                times.percentileNanos(99),
                times.maxNanos());
    }

    static Stages worstStages(SlotMeasure slot) {
        long[] nanos = new long[SlotMeasure.STAGES];
        for (int stage = 0; stage < nanos.length; stage++) {
            nanos[stage] = slot.worstStageNanos(stage);
        }
        return stages(nanos);
    }

    /** Means that add up to the mean latency, rounded down, to the nanosecond: the cuts are rounded, not the stages. */
    static Stages meanStages(List<SlotMeasure> slots) {
        long count = 0;
        for (SlotMeasure slot : slots) {
            count += slot.latency().count();
        }
        if (count == 0) {
            return Stages.NONE;
        }
        long[] nanos = new long[SlotMeasure.STAGES];
        long sum = 0;
        for (int stage = 0; stage < nanos.length; stage++) {
            long before = sum / count;
            for (SlotMeasure slot : slots) {
                sum += slot.stageSumNanos(stage);
            }
            nanos[stage] = sum / count - before;
        }
        return stages(nanos);
    }

    static Stages stages(long[] nanos) {
        return new Stages(nanos[0], nanos[1], nanos[2], nanos[3], nanos[4], nanos[5]);
    }

    static LatencyHistogram histogram(Times times) {
        List<LatencyHistogram.Bucket> buckets = new ArrayList<>();
        if (times.count() > 0) {
            long width = roundWidth(times.maxNanos());
            for (long from = 0; from <= times.maxNanos(); from += width) {
                buckets.add(new LatencyHistogram.Bucket(from, from + width, times.countBetween(from, from + width)));
            }
        }
        return new LatencyHistogram(buckets);
    }

    /** The least of 1, 2, 5 times a power of ten microseconds that needs no more than the allowed buckets. */
    private static long roundWidth(long maxNanos) {
        for (long unit = 1000; ; unit *= 10) {
            for (long width : new long[] {unit, 2 * unit, 5 * unit}) {
                if (maxNanos / width < MOST_BUCKETS) {
                    return width;
                }
            }
        }
    }

    static SignalResult signal(SlotMeasure slot) {
        boolean moves = slot.slot().indicator().kind().moves();
        @Nullable Latency settling = moves ? latency(slot.settling()) : null;
        return new SignalResult(
                slot.slot().indicator().name(),
                Words.of(slot.slot().indicator().kind()),
                slot.signal().name(),
                slot.signal().unit(),
                slot.changes(),
                slot.initial(),
                latency(slot.latency()),
                latency(slot.ownDelay()),
                meanStages(List.of(slot)),
                worstStages(slot),
                slot.ageMeanNanos(),
                slot.agePeakNanos(),
                slot.displayErrorMax(),
                slot.displayErrorRms(),
                settling,
                slot.coalesced(),
                slot.missed(),
                slot.lost());
    }

    static List<SegmentResult.CyclePoint> cyclePoints(BusMeasure bus) {
        CycleSeries series = bus.cycleSeries();
        List<SegmentResult.CyclePoint> points = new ArrayList<>();
        for (int i = 0; i < CycleSeries.MOST_POINTS; i++) {
            if (series.count(i) > 0) {
                points.add(new SegmentResult.CyclePoint(
                        i * series.stretchNanos(), series.meanNanos(i), series.maxNanos(i)));
            }
        }
        return points;
    }
}
