package dropline.harness.report;

import dropline.harness.verdict.Stage;
import dropline.harness.verdict.Stages;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A latency cut into its stages, along a bar 1000 wide for the longest of those shown together.
 *
 * @param name of what
 * @param totalNanos the whole, ns
 * @param longest the longest stage in words, with its length
 * @param parts one for each stage that took any time, in order
 */
public record StageBar(String name, long totalNanos, String longest, List<Part> parts) {

    /**
     * One stage's piece of the bar.
     *
     * @param stage which
     * @param x start
     * @param width length
     * @param title in words
     */
    public record Part(Stage stage, double x, double width, String title) {
        /** The part's class in the style sheet. */
        public String style() {
            return style(stage);
        }

        /** A stage's class in the style sheet. */
        public static String style(Stage stage) {
            return stage.name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    public StageBar {
        parts = List.copyOf(parts);
    }

    static StageBar of(String name, Stages stages, long fullNanos) {
        List<Part> parts = new ArrayList<>();
        long before = 0;
        for (Stage stage : Stage.values()) {
            long nanos = stages.nanos(stage);
            if (nanos > 0) {
                double x = thousandths(before, fullNanos);
                String title = stage.words() + " " + Figures.time(nanos);
                parts.add(new Part(stage, x, thousandths(before + nanos, fullNanos) - x, title));
            }
            before += nanos;
        }
        Stage longest = stages.longest();
        String words = longest.words() + " " + Figures.time(stages.nanos(longest));
        return new StageBar(name, stages.totalNanos(), words, parts);
    }

    private static double thousandths(long nanos, long fullNanos) {
        return Math.round(10_000.0 * nanos / fullNanos) / 10.0;
    }
}
