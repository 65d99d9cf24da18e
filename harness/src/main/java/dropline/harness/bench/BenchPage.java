package dropline.harness.bench;

import dropline.harness.verdict.Outcome;
import dropline.harness.verdict.Words;
import dropline.harness.wiring.Cautions;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * An examination laid out as a page.
 *
 * @param columns how its reply gaps are spread; empty where none was measured
 */
public record BenchPage(BenchResult result, List<Column> columns) {
    /** Inner width of the chart. */
    public static final double WIDTH = 640;

    /** Inner height of the chart. */
    public static final double HEIGHT = 110;

    private static final int MOST_COLUMNS = 40;

    /** Reply gaps that are about as long; {@code title} says how many. */
    public record Column(double x, double width, double height, String title) {}

    public BenchPage {
        columns = List.copyOf(columns);
    }

    /** The page as one HTML file that needs no network and no script. */
    public static String html(BenchResult result) {
        StringOutput html = new StringOutput(1 << 16);
        BenchPage page = new BenchPage(result, columns(result.gapsNanos()));
        TemplateEngine.createPrecompiled(ContentType.Html).render("bench.jte", page, html);
        return html.toString();
    }

    private static List<Column> columns(List<Long> gaps) {
        if (gaps.isEmpty()) {
            return List.of();
        }
        long least = gaps.get(0);
        long span = Math.max(MOST_COLUMNS, gaps.get(gaps.size() - 1) - least + 1);
        int[] counts = new int[MOST_COLUMNS];
        int most = 0;
        for (long gap : gaps) {
            int place = (int) ((gap - least) * MOST_COLUMNS / span);
            most = Math.max(most, ++counts[place]);
        }
        List<Column> columns = new ArrayList<>();
        double width = WIDTH / MOST_COLUMNS;
        for (int i = 0; i < counts.length; i++) {
            if (counts[i] > 0) {
                String title = counts[i] + " from " + Words.time(least + i * span / MOST_COLUMNS) + " to "
                        + Words.time(least + (i + 1) * span / MOST_COLUMNS);
                columns.add(new Column(i * width, width - 1, Math.max(2, HEIGHT * counts[i] / most), title));
            }
        }
        return columns;
    }

    /** The answer in one sentence. */
    public String headline() {
        return BenchText.headline(result).replaceFirst("^FAIL\\. ", "");
    }

    /** How it came out: a class of the style sheet. */
    public String outcome() {
        return word(result.outcome());
    }

    /** An outcome: a class of the style sheet. */
    public static String word(Outcome outcome) {
        return outcome.name().toLowerCase(Locale.ROOT);
    }

    /** What came out of an item. */
    public static String says(Item item) {
        return item.says() + BenchText.margin(item);
    }

    /** The shortest reply gap. */
    public String least() {
        return Words.time(result.passport().leastGapNanos());
    }

    /** The longest reply gap. */
    public String most() {
        return Words.time(result.passport().mostGapNanos());
    }

    /** What the link adds; empty where it is exact. */
    public String floor() {
        return result.floorNanos() == 0
                ? ""
                : "The link may add " + Words.time(result.floorNanos())
                        + " to every instant; what is tighter than that is undecided.";
    }

    /** What stands above everything that tells people to touch wires. */
    public List<String> cautions() {
        return Cautions.LINES;
    }
}
