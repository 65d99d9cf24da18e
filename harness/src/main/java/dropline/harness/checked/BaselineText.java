package dropline.harness.checked;

import dropline.harness.baseline.Checkup.Explained;
import dropline.harness.baseline.Checkup.Reasons;
import dropline.harness.baseline.Checkup.Standings;
import dropline.harness.baseline.Deviation;
import dropline.harness.baseline.Deviation.Standing;
import dropline.harness.baseline.PitChange;
import dropline.harness.baseline.Why;
import dropline.harness.report.Figures;
import dropline.harness.report.Paragraphs;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** How runs stand against the accepted ones, as plain text. */
public final class BaselineText {
    private static final int MOST_CHANGES = 20;

    private BaselineText() {}

    /** What is worse, gone, better and new, in this order; empty where nothing was accepted. */
    static String of(Standings standings) {
        if (!standings.compared()) {
            return "";
        }
        StringBuilder text = new StringBuilder("\nAgainst the accepted runs\n");
        Paragraphs paragraphs = new Paragraphs(text);
        standings.notes().forEach(note -> paragraphs.add("  - ", note));
        for (Standing standing : Standing.values()) {
            for (Deviation deviation : standings.deviations()) {
                if (deviation.standing() == standing) {
                    paragraphs.add("  - ", words(deviation));
                }
            }
        }
        if (standings.deviations().isEmpty() && standings.notes().isEmpty()) {
            paragraphs.add("  - ", "Nothing is worse, better, new or gone.");
        }
        return text.toString();
    }

    /** One of them in a sentence. */
    static String words(Deviation deviation) {
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

    static String value(Deviation deviation, double value) {
        if (deviation.figure() != null && deviation.figure().isTime()) {
            return Figures.time(Math.round(value));
        }
        return value == Math.rint(value) ? Long.toString((long) value) : String.format(Locale.ROOT, "%.1f", value);
    }

    /** What stands otherwise in the pit file since the runs were accepted, and what of it is behind what is worse. */
    public static String of(Reasons reasons) {
        StringBuilder text = new StringBuilder("\nChanged in the pit file since then\n");
        Paragraphs paragraphs = new Paragraphs(text);
        changes(reasons).forEach(line -> paragraphs.add("  - ", line));
        text.append("\nWhy\n");
        if (reasons.explained().isEmpty()) {
            paragraphs.add("  - ", "Nothing is worse than it was accepted.");
        }
        for (Explained explained : reasons.explained()) {
            paragraphs.add("  - ", words(explained.deviation()));
            paragraphs.add("    ", cause(explained.cause()));
        }
        return text.toString();
    }

    /** The changes of a pit file, a line each; cut where there are many. */
    static List<String> changes(Reasons reasons) {
        List<String> lines = new ArrayList<>();
        reasons.changes().stream().limit(MOST_CHANGES).forEach(change -> lines.add(change.words()));
        if (reasons.changes().size() > MOST_CHANGES) {
            lines.add("and " + (reasons.changes().size() - MOST_CHANGES) + " more");
        }
        return lines.isEmpty() ? List.of("Nothing.") : lines;
    }

    /** What is behind one deviation, in a sentence. */
    static String cause(Why.Cause cause) {
        if (cause.changes().isEmpty()) {
            return "No change of the pit file explains it (" + cause.tried() + " pits were run).";
        }
        List<String> words = cause.changes().stream().map(PitChange::words).toList();
        return String.join("; ", words) + (words.size() == 1 ? " alone explains " : " together explain ")
                + Figures.percent(Math.max(0, Math.min(1, cause.share()))) + " of it (" + cause.tried()
                + " pits were run).";
    }
}
