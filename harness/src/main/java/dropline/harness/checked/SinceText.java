package dropline.harness.checked;

import dropline.harness.baseline.Checkup;
import dropline.harness.baseline.Deviation;
import dropline.harness.report.Figures;
import dropline.harness.report.Paragraphs;
import dropline.harness.suite.RunOutcome;
import java.util.List;

/** What a check finds when it looks again, as plain text: what is different first. */
public final class SinceText {
    private static final int MOST_FIGURES = 12;

    private SinceText() {}

    /**
     * A later look.
     *
     * @param deviations of the runs that were run again, the largest first
     * @param ranAgain the names of those
     */
    public static String of(Checkup now, Checkup before, List<Deviation> deviations, List<String> ranAgain) {
        StringBuilder text = new StringBuilder("Since the last look\n");
        Paragraphs paragraphs = new Paragraphs(text);
        paragraphs.add(
                "  - ",
                ranAgain.isEmpty() ? "No run had to be run again." : "Run again: " + String.join(", ", ranAgain) + ".");
        for (RunOutcome run : now.runs()) {
            before.runs().stream()
                    .filter(other -> other.run().equals(run.run()) && other.seed() == run.seed())
                    .filter(other -> other.outcome() != run.outcome())
                    .forEach(other -> paragraphs.add(
                            "  - ",
                            run.run() + " (seed " + run.seed() + "): " + Figures.word(other.outcome()) + " -> "
                                    + Figures.word(run.outcome()) + "."));
        }
        deviations.stream().limit(MOST_FIGURES).forEach(one -> paragraphs.add("  - ", BaselineText.words(one)));
        if (deviations.size() > MOST_FIGURES) {
            paragraphs.add("  - ", "and " + (deviations.size() - MOST_FIGURES) + " figures more");
        }
        return text.append('\n').append(SuiteText.of(now)).toString();
    }
}
