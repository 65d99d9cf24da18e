package dropline.harness.report;

import dropline.harness.verdict.Outcome;
import dropline.harness.verdict.PanelResult;
import dropline.harness.verdict.ReplayResult;
import dropline.harness.verdict.SegmentResult;
import java.util.ArrayList;
import java.util.List;

/**
 * A segment as a line from which its panels hang, each as deep as its slowest update reaches towards its limit. Half
 * way down is half the limit; the limit is at {@link #LIMIT}; what hangs lower missed it, and is cut at twice the
 * limit.
 *
 * @param segment its name
 * @param drops its panels, least margin first
 */
public record DropLine(String segment, List<Drop> drops) {
    /** Where the segment's line is. */
    public static final double TOP = 8;

    /** Where the limit is. */
    public static final double LIMIT = 68;

    private static final double STEP = 16;

    /**
     * A panel.
     *
     * @param x its place along the line
     * @param y its end
     * @param outcome its verdict
     * @param title in words
     */
    public record Drop(double x, double y, Outcome outcome, String title) {

        /** Corners of a lozenge at its end, for a panel that misses its limit. */
        public String lozenge() {
            return x + "," + (y - 6) + " " + (x + 6) + "," + y + " " + x + "," + (y + 6) + " " + (x - 6) + "," + y;
        }
    }

    public DropLine {
        drops = List.copyOf(drops);
    }

    static List<DropLine> all(ReplayResult result) {
        List<DropLine> lines = new ArrayList<>();
        for (SegmentResult segment : result.segments()) {
            List<Drop> drops = new ArrayList<>();
            for (PanelResult panel : result.panels()) {
                if (panel.segment().equals(segment.segment())) {
                    drops.add(drop(panel, STEP * (drops.size() + 0.75)));
                }
            }
            if (!drops.isEmpty()) {
                lines.add(new DropLine(segment.segment(), drops));
            }
        }
        return lines;
    }

    /** Width of the picture. */
    public double width() {
        return STEP * (drops.size() + 0.5);
    }

    private static Drop drop(PanelResult panel, double x) {
        Outcome outcome = panel.verdict().outcome();
        if (outcome == Outcome.UNDECIDED) {
            return new Drop(x, TOP + 14, outcome, panel.panel() + ": never updated, not judged");
        }
        long slowest = panel.verdict().valueNanos();
        double share = Math.min(2.0, (double) slowest / panel.budgetNanos());
        double y = Math.round((TOP + share * (LIMIT - TOP)) * 10) / 10.0;
        String title = panel.panel() + ": slowest " + Figures.time(slowest) + " of " + Figures.time(panel.budgetNanos())
                + ", " + Figures.word(outcome);
        return new Drop(x, y, outcome, title);
    }
}
