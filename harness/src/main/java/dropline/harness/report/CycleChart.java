package dropline.harness.report;

import dropline.harness.verdict.SegmentResult;
import dropline.harness.verdict.SegmentResult.CyclePoint;
import java.util.List;

/**
 * A segment's poll cycle over the recording: the mean as a line, the longest of each stretch as the edge of an area.
 *
 * @param segment its name
 * @param mean points of the line
 * @param longest points of the area
 * @param times marks along the recording
 * @param lengths marks of the cycle's length, measured from the top
 */
public record CycleChart(String segment, String mean, String longest, List<Tick> times, List<Tick> lengths) {
    /** Inner width. */
    public static final double WIDTH = 330;

    /** Inner height. */
    public static final double HEIGHT = 90;

    public CycleChart {
        times = List.copyOf(times);
        lengths = List.copyOf(lengths);
    }

    static CycleChart of(SegmentResult segment, long durationNanos) {
        List<CyclePoint> points = segment.pollCycleOverTime();
        long top = 1;
        long end = Math.max(1, durationNanos);
        for (CyclePoint point : points) {
            top = Math.max(top, point.maxNanos());
            end = Math.max(end, point.atNanos());
        }
        top += top / 10;
        StringBuilder mean = new StringBuilder();
        StringBuilder longest = new StringBuilder("0," + HEIGHT);
        double x = 0;
        for (CyclePoint point : points) {
            x = tenth(WIDTH * point.atNanos() / end);
            mean.append(x).append(',').append(y(point.meanNanos(), top)).append(' ');
            longest.append(' ').append(x).append(',').append(y(point.maxNanos(), top));
        }
        longest.append(' ').append(x).append(',').append(HEIGHT);
        List<Tick> lengths = Tick.along(top, HEIGHT, 3).stream()
                .map(tick -> new Tick(tenth(HEIGHT - tick.at()), tick.text()))
                .toList();
        return new CycleChart(
                segment.segment(), mean.toString().strip(), longest.toString(), Tick.along(end, WIDTH, 4), lengths);
    }

    private static double y(long nanos, long top) {
        return tenth(HEIGHT - HEIGHT * nanos / top);
    }

    private static double tenth(double value) {
        return Math.round(value * 10) / 10.0;
    }
}
