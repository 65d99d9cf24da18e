package dropline.harness.report;

import dropline.harness.verdict.LatencyHistogram;
import dropline.harness.verdict.LatencyHistogram.Bucket;
import dropline.harness.verdict.PanelResult;
import java.util.ArrayList;
import java.util.List;

/**
 * A panel's update latencies as columns; heights are on a root scale, so that the rare slow ones can be seen.
 *
 * @param panel its name
 * @param columns from fast to slow
 * @param limit where the limit is; negative if it lies beyond the chart
 * @param limitText the limit in words
 * @param axis marks along the axis
 * @param most the highest column's count
 */
public record HistogramChart(
        String panel, List<Column> columns, double limit, String limitText, List<Tick> axis, long most) {
    /** Inner width. */
    public static final double WIDTH = 320;

    /** Inner height. */
    public static final double HEIGHT = 96;

    /** One bucket; {@code over} if it lies beyond the limit. */
    public record Column(double x, double width, double height, boolean over, String title) {}

    public HistogramChart {
        columns = List.copyOf(columns);
        axis = List.copyOf(axis);
    }

    static HistogramChart of(PanelResult panel) {
        LatencyHistogram histogram = panel.histogram();
        List<Bucket> buckets = histogram.buckets();
        long end = Math.max(
                buckets.get(buckets.size() - 1).untilNanos(),
                Math.min(panel.budgetNanos() * 21 / 20, panel.updateLatency().maxNanos() * 4));
        long most = 1;
        for (Bucket bucket : buckets) {
            most = Math.max(most, bucket.count());
        }
        List<Column> columns = new ArrayList<>();
        for (Bucket bucket : buckets) {
            if (bucket.count() > 0) {
                columns.add(column(bucket, panel.budgetNanos(), end, most));
            }
        }
        double limit = panel.budgetNanos() <= end ? x(panel.budgetNanos(), end) : -1;
        return new HistogramChart(
                panel.panel(), columns, limit, Figures.time(panel.budgetNanos()), Tick.along(end, WIDTH, 4), most);
    }

    private static Column column(Bucket bucket, long limitNanos, long end, long most) {
        double height = Math.max(1.5, Math.round(StrictMath.sqrt((double) bucket.count() / most) * HEIGHT * 10) / 10.0);
        double from = x(bucket.fromNanos(), end);
        String title = Figures.count(bucket.count()) + " from " + Figures.time(bucket.fromNanos()) + " to "
                + Figures.time(bucket.untilNanos());
        double width = Math.max(1.2, Math.round((x(bucket.untilNanos(), end) - from - 0.6) * 10) / 10.0);
        return new Column(from, width, height, bucket.fromNanos() >= limitNanos, title);
    }

    private static double x(long nanos, long end) {
        return Math.round(10 * WIDTH * nanos / end) / 10.0;
    }
}
