package dropline.harness.describe;

import dropline.harness.origin.Trials;
import dropline.harness.pitfile.Figure;
import dropline.harness.pitfile.Figures;
import dropline.harness.pitfile.Origin;

/** Where the figures of a pit come from, and each guess among them. */
public final class FiguresText {
    private FiguresText() {}

    /** A heading, the counts, and a line for each guess. Lines end in {@code \n}. */
    public static String of(Figures figures) {
        StringBuilder text = new StringBuilder("\nFigures\n\n");
        Trials.counted(figures)
                .sentences()
                .forEach(sentence -> text.append(sentence).append('\n'));
        Table guesses = new Table("guessed", "about", "on segment", "written at");
        for (Figure guess : figures.of(Origin.GUESSED)) {
            guesses.row(guess.path(), guess.text(), String.join(", ", guess.segments()), guess.where());
        }
        if (!guesses.isEmpty()) {
            text.append('\n').append(guesses.text());
        }
        return text.toString();
    }
}
