package dropline.harness.report;

import dropline.harness.verdict.LatencyHistogram;
import dropline.harness.verdict.PanelResult;
import dropline.harness.verdict.ReplayResult;
import dropline.harness.verdict.RestsOn;
import dropline.harness.verdict.SegmentResult;
import dropline.harness.verdict.SingleFailure;
import dropline.harness.verdict.Stages;
import dropline.harness.verdict.WorstMoment;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the report shows, laid out.
 *
 * @param result what it is about
 * @param drops the picture at its head: a line for each segment
 * @param histograms latencies of the panels with the least margin
 * @param stages where the time went, on average, of the panels with the least margin
 * @param worstStages where the time of their slowest updates went
 * @param cycles poll cycles over time, one for each segment that has any
 * @param moments the bus around the slowest updates of the panels with the least margin
 */
public record Page(
        ReplayResult result,
        List<DropLine> drops,
        List<HistogramChart> histograms,
        List<StageBar> stages,
        List<StageBar> worstStages,
        List<CycleChart> cycles,
        List<BusPicture> moments) {

    private static final int HISTOGRAMS = 6;
    private static final int STAGE_BARS = 10;
    private static final int MOMENTS = 3;

    /** Lays a result out. */
    public static Page of(ReplayResult result) {
        return new Page(
                result,
                DropLine.all(result),
                histograms(result),
                stages(result, false),
                stages(result, true),
                cycles(result),
                moments(result));
    }

    /** Where the pit's figures come from, in sentences. */
    public List<String> restsOn() {
        RestsOn figures = result.restsOn();
        return figures == null ? List.of() : figures.sentences();
    }

    /** The panels that miss their limit only while this node is dead, in words. */
    public static String thenMiss(SingleFailure failure) {
        return TextReport.thenMiss(failure);
    }

    private static List<HistogramChart> histograms(ReplayResult result) {
        List<HistogramChart> charts = new ArrayList<>();
        for (PanelResult panel : result.panels()) {
            LatencyHistogram histogram = panel.histogram();
            if (charts.size() < HISTOGRAMS && !histogram.buckets().isEmpty()) {
                charts.add(HistogramChart.of(panel));
            }
        }
        return charts;
    }

    private static List<StageBar> stages(ReplayResult result, boolean worst) {
        List<PanelResult> shown = new ArrayList<>();
        long longest = 1;
        for (PanelResult panel : result.panels()) {
            Stages stages = stages(panel, worst);
            if (shown.size() < STAGE_BARS && stages != null && stages.totalNanos() > 0) {
                shown.add(panel);
                longest = Math.max(longest, stages.totalNanos());
            }
        }
        List<StageBar> bars = new ArrayList<>();
        for (PanelResult panel : shown) {
            Stages stages = stages(panel, worst);
            if (stages != null) {
                bars.add(StageBar.of(panel.panel(), stages, longest));
            }
        }
        return bars;
    }

    private static @Nullable Stages stages(PanelResult panel, boolean worst) {
        WorstMoment moment = panel.worst();
        return worst ? (moment == null ? null : moment.stages()) : panel.meanStages();
    }

    private static List<CycleChart> cycles(ReplayResult result) {
        List<CycleChart> charts = new ArrayList<>();
        for (SegmentResult segment : result.segments()) {
            if (!segment.pollCycleOverTime().isEmpty()) {
                charts.add(CycleChart.of(segment, result.recording().durationNanos()));
            }
        }
        return charts;
    }

    private static List<BusPicture> moments(ReplayResult result) {
        List<BusPicture> pictures = new ArrayList<>();
        for (PanelResult panel : result.panels()) {
            WorstMoment worst = panel.worst();
            if (pictures.size() < MOMENTS && worst != null && !worst.frames().isEmpty()) {
                pictures.add(BusPicture.of(panel, worst));
            }
        }
        return pictures;
    }
}
