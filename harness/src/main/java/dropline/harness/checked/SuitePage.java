package dropline.harness.checked;

import dropline.harness.baseline.Checkup;
import dropline.harness.baseline.Checkup.Reasons;
import dropline.harness.baseline.Deviation;
import dropline.harness.baseline.Deviation.Standing;
import dropline.harness.report.Figures;
import dropline.harness.suite.RunOutcome;
import dropline.harness.suite.StepOutcome;
import dropline.harness.verdict.Outcome;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * A check laid out as a page: what has changed first.
 *
 * @param reasons null where they were not asked for
 * @param version the program's
 */
public record SuitePage(Checkup checkup, @Nullable Reasons reasons, String version) {
    private static final int MOST_SHOWN = 60;
    private static final double BAR = 150;

    /** The page as one HTML file that needs no network and no script. The same check gives the same bytes. */
    public static String html(Checkup checkup, @Nullable Reasons reasons, String version) {
        StringOutput html = new StringOutput(1 << 16);
        TemplateEngine.createPrecompiled(ContentType.Html)
                .render("suite.jte", new SuitePage(checkup, reasons, version), html);
        return html.toString();
    }

    /**
     * Something that is no more as it was accepted, as a row.
     *
     * @param standing in a word
     * @param style a class of the style sheet
     * @param was empty for something new
     * @param is empty for something gone
     * @param ratio {@code +12 %}; empty where there is none
     * @param before width of the bar for what was, of 150
     * @param after width of the bar for what is
     */
    public record Change(
            String standing,
            String style,
            String what,
            String figure,
            String run,
            String was,
            String is,
            String ratio,
            double before,
            double after) {}

    /** A run with one seed, or a step, as a row. */
    public record Row(String style, String word, String name, String seed, String checked, List<String> broke) {
        public Row {
            broke = List.copyOf(broke);
        }
    }

    /** Whether everything holds and nothing is worse: a class of the style sheet. */
    public String outcome() {
        return style(checkup.verdict());
    }

    /** The answer in one sentence, and how it stands against the accepted runs in another. */
    public List<String> sentences() {
        List<String> sentences = new ArrayList<>();
        sentences.add(SuiteText.headline(checkup).replaceFirst("^(PASS|FAIL|UNDECIDED)\\. ", ""));
        Checkup.Standings standings = checkup.standings();
        if (!standings.compared()) {
            sentences.add("Nothing was accepted yet: dropline check --accept does that.");
        } else if (standings.deviations().isEmpty()) {
            sentences.add("Against the accepted runs nothing is worse, better, new or gone.");
        } else {
            List<String> counts = new ArrayList<>();
            for (Standing standing : Standing.values()) {
                long count = standings.deviations().stream()
                        .filter(one -> one.standing() == standing)
                        .count();
                if (count > 0) {
                    counts.add(count + " " + word(standing));
                }
            }
            sentences.add("Against the accepted runs: " + String.join(", ", counts) + ".");
        }
        sentences.addAll(standings.notes());
        return sentences;
    }

    /** What is no more as it was accepted, what is worse first. */
    public List<Change> changes() {
        List<Change> changes = new ArrayList<>();
        for (Standing standing : Standing.values()) {
            checkup.standings().deviations().stream()
                    .filter(one -> one.standing() == standing)
                    .forEach(one -> changes.add(change(one)));
        }
        return changes.size() > MOST_SHOWN ? changes.subList(0, MOST_SHOWN) : changes;
    }

    /** How many of them are not shown. */
    public int furtherChanges() {
        return Math.max(0, checkup.standings().deviations().size() - MOST_SHOWN);
    }

    private static Change change(Deviation one) {
        boolean compared = one.figure() != null && one.standing() != Standing.GONE;
        double most = Math.max(one.was(), one.is());
        boolean drawn = compared && most > 0;
        return new Change(
                word(one.standing()),
                one.isBad() ? "fail" : one.standing() == Standing.BETTER ? "pass" : "undecided",
                one.subject().toString(),
                one.figure() == null ? "" : one.figure().words(),
                one.run(),
                one.figure() == null ? "" : BaselineText.value(one, one.was()),
                compared ? BaselineText.value(one, one.is()) : "",
                compared && one.was() > 0 ? ratio(one.is() / one.was() - 1) : "",
                drawn ? BAR * one.was() / most : 0,
                drawn ? BAR * one.is() / most : 0);
    }

    private static String ratio(double more) {
        return String.format(Locale.ROOT, Math.abs(more) < 0.1 ? "%+.1f %%" : "%+.0f %%", 100 * more);
    }

    /** What has changed in the pit file; empty where that was not asked for. */
    public List<String> pitChanges() {
        return reasons == null ? List.of() : BaselineText.changes(reasons);
    }

    /** What is worse and why, a sentence each. */
    public List<String> causes() {
        return reasons == null
                ? List.of()
                : reasons.explained().stream()
                        .map(one -> BaselineText.words(one.deviation()) + " " + BaselineText.cause(one.cause()))
                        .toList();
    }

    /** Every run with every seed. */
    public List<Row> runs() {
        List<Row> rows = new ArrayList<>();
        for (RunOutcome run : checkup.runs()) {
            rows.add(new Row(
                    style(run.outcome()),
                    Figures.word(run.outcome()),
                    run.run(),
                    Long.toString(run.seed()),
                    SuiteText.words(run),
                    SuiteText.broken(run)));
        }
        return rows;
    }

    /** What else was to be checked. */
    public List<Row> steps() {
        List<Row> rows = new ArrayList<>();
        for (StepOutcome step : checkup.steps()) {
            boolean notRun = step.standing() == StepOutcome.Standing.NOT_RUN;
            rows.add(new Row(
                    notRun ? "undecided" : step.standing().name().toLowerCase(Locale.ROOT),
                    SuiteText.word(step.standing()),
                    step.step(),
                    "",
                    step.checked(),
                    step.words()));
        }
        return rows;
    }

    /** What the figures rest on. */
    public List<String> restsOn() {
        return SuiteText.restsOn(checkup);
    }

    private static String word(Standing standing) {
        return standing == Standing.OTHER ? "changed" : standing.name().toLowerCase(Locale.ROOT);
    }

    private static String style(Outcome outcome) {
        return outcome.name().toLowerCase(Locale.ROOT);
    }
}
