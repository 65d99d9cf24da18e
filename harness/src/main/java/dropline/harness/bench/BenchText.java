package dropline.harness.bench;

import dropline.harness.verdict.Outcome;
import dropline.harness.verdict.Words;
import java.util.Locale;

/** An examination in plain sentences. */
public final class BenchText {
    private static final int WIDTH = 96;
    private static final String INDENT = " ".repeat(32);

    private BenchText() {}

    public static String of(BenchResult result) {
        StringBuilder text = new StringBuilder();
        text.append(headline(result)).append('\n');
        for (Item item : result.items()) {
            String verdict = item.outcome() == Outcome.FAIL
                    ? "FAIL"
                    : item.outcome().name().toLowerCase(Locale.ROOT);
            wrapped(
                    text,
                    String.format(Locale.ROOT, "  %-9s  %-18s ", verdict, item.name()),
                    item.says() + margin(item));
            if (!item.suspects().isEmpty()) {
                wrapped(
                        text,
                        INDENT,
                        "It looks like: " + String.join(", ", item.suspects())
                                + " ('dropline faults KIND' says more).");
            }
        }
        text.append("Examined over ").append(result.over()).append('.');
        if (result.floorNanos() > 0) {
            text.append(" The link may add ")
                    .append(Words.time(result.floorNanos()))
                    .append(" to every instant;\nwhat is tighter than that is undecided.");
        }
        return text.append('\n').toString();
    }

    static String headline(BenchResult result) {
        long failed = count(result, Outcome.FAIL);
        long undecided = count(result, Outcome.UNDECIDED);
        long passed = count(result, Outcome.PASS);
        return switch (result.outcome()) {
            case PASS -> result.subject() + " is fit to wire, as far as " + passed + " items show.";
            case FAIL ->
                "FAIL. " + result.subject() + " is not fit to wire: " + failed + " of "
                        + result.items().size() + " items fail.";
            case UNDECIDED ->
                result.subject() + " passes " + passed + " items; " + undecided + " cannot be decided over this link.";
        };
    }

    private static long count(BenchResult result, Outcome outcome) {
        return result.items().stream().filter(item -> item.outcome() == outcome).count();
    }

    /** The limit and the distance from it, in brackets; empty where the item is no matter of time. */
    static String margin(Item item) {
        Item.Measure measure = item.measure();
        if (measure == null) {
            return "";
        }
        return " (" + (measure.atLeast() ? "at least " : "at most ") + Words.time(measure.limitNanos()) + ", margin "
                + (measure.marginNanos() < 0 ? "-" : "+") + Words.time(Math.abs(measure.marginNanos())) + ", "
                + item.trials() + " trials)";
    }

    private static void wrapped(StringBuilder text, String before, String words) {
        StringBuilder line = new StringBuilder(before);
        boolean first = true;
        for (String word : words.split(" ")) {
            if (!first && line.length() + 1 + word.length() > WIDTH) {
                text.append(line.toString().stripTrailing()).append('\n');
                line = new StringBuilder(INDENT);
                first = true;
            }
            line.append(first ? "" : " ").append(word);
            first = false;
        }
        text.append(line.toString().stripTrailing()).append('\n');
    }
}
