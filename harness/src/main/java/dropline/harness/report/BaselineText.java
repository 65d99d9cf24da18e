package dropline.harness.report;

import dropline.harness.baseline.Deviation;
import dropline.harness.baseline.Deviation.Standing;
import dropline.harness.baseline.PitChange;
import dropline.harness.baseline.Why;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** How runs stand against the accepted ones, as plain text. */
public final class BaselineText {
    private static final int MOST_CHANGES = 20;

    private BaselineText() {}

    /**
     * What is worse, gone, better and new, in this order.
     *
     * @param notes what else is to be said first, a sentence each
     */
    public static String of(List<Deviation> deviations, List<String> notes) {
        StringBuilder text = new StringBuilder("\nAgainst the accepted runs\n");
        Paragraphs paragraphs = new Paragraphs(text);
        notes.forEach(note -> paragraphs.add("  - ", note));
        for (Standing standing : Standing.values()) {
            for (Deviation deviation : deviations) {
                if (deviation.standing() == standing) {
                    paragraphs.add("  - ", words(deviation));
                }
            }
        }
        if (deviations.isEmpty() && notes.isEmpty()) {
            paragraphs.add("  - ", "Nothing is worse, better, new or gone.");
        }
        return text.toString();
    }

    /** One of them in a sentence. */
    public static String words(Deviation deviation) {
        String what = deviation.standing().name();
        if (deviation.figure() == null) {
            return what + ": " + deviation.subject() + " (run " + deviation.run() + ").";
        }
        if (deviation.standing() == Standing.GONE) {
            return what + ": " + deviation.subject() + ", " + deviation.figure().words() + " (run " + deviation.run()
                    + "): there is none any more.";
        }
        return (deviation.standing() == Standing.OTHER ? "CHANGED" : what) + ": " + deviation.subject() + ", "
                + deviation.figure().words() + " "
                + value(deviation, deviation.was()) + " -> " + value(deviation, deviation.is()) + " (run "
                + deviation.run() + ").";
    }

    private static String value(Deviation deviation, double value) {
        if (deviation.figure() != null && deviation.figure().isTime()) {
            return Figures.time(Math.round(value));
        }
        return value == Math.rint(value) ? Long.toString((long) value) : String.format(Locale.ROOT, "%.1f", value);
    }

    /** What stands otherwise in the pit file since the runs were accepted. */
    public static String changes(List<PitChange> changes) {
        StringBuilder text = new StringBuilder("\nChanged in the pit file since then\n");
        Paragraphs paragraphs = new Paragraphs(text);
        if (changes.isEmpty()) {
            paragraphs.add("  - ", "Nothing.");
        }
        changes.stream().limit(MOST_CHANGES).forEach(change -> paragraphs.add("  - ", change.words()));
        if (changes.size() > MOST_CHANGES) {
            paragraphs.add("  - ", "and " + (changes.size() - MOST_CHANGES) + " more");
        }
        return text.toString();
    }

    /** What is behind one deviation. */
    public static String why(Deviation deviation, Why.Cause cause) {
        StringBuilder text = new StringBuilder();
        Paragraphs paragraphs = new Paragraphs(text);
        paragraphs.add("  - ", words(deviation));
        if (cause.changes().isEmpty()) {
            paragraphs.add("    ", "No change of the pit file explains it (" + cause.tried() + " pits were run).");
            return text.toString();
        }
        List<String> words = new ArrayList<>();
        cause.changes().forEach(change -> words.add(change.words()));
        paragraphs.add(
                "    ",
                String.join("; ", words) + (cause.changes().size() == 1 ? " alone explains " : " together explain ")
                        + Figures.percent(Math.max(0, Math.min(1, cause.share()))) + " of it (" + cause.tried()
                        + " pits were run).");
        return text.toString();
    }
}
