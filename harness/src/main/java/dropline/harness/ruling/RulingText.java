package dropline.harness.ruling;

import dropline.bus.rule.Rule;
import dropline.bus.rule.Ruling;
import dropline.harness.report.Paragraphs;
import dropline.harness.report.TextTable;
import java.util.List;
import java.util.function.Function;

/** Rulings as a table and, below it, what each rests on and what to do. */
public final class RulingText {
    private RulingText() {}

    /** What a rule came to, in one word. */
    public static String word(Ruling ruling) {
        return switch (ruling.standing()) {
            case HOLDS -> "pass";
            case UNKNOWN -> "undecided";
            case BROKEN -> ruling.rule().weight() == Rule.Weight.LAW ? "FAIL" : "caution";
        };
    }

    /** What was judged: {@code 248 mV}; a dash where it is not known. */
    public static String value(Ruling ruling) {
        return Amounts.of(ruling.value(), ruling.rule().unit());
    }

    /** What it was judged against: {@code at least 200 mV}. */
    public static String limit(Ruling ruling) {
        if (Double.isNaN(ruling.limit())) {
            return "-";
        }
        String side = ruling.rule().sense() == Rule.Sense.AT_MOST ? "at most " : "at least ";
        return side + Amounts.of(ruling.limit(), ruling.rule().unit());
    }

    /** What is left, or missing, with its sign: {@code +48 mV}. */
    public static String margin(Ruling ruling) {
        double margin = ruling.margin();
        String amount = Amounts.of(margin, ruling.rule().unit());
        return margin > 0 ? "+" + amount : amount;
    }

    /** A row for each. */
    public static String table(List<Ruling> rulings) {
        TextTable table = new TextTable("verdict", "rule", "where", ">value", ">limit", ">margin");
        for (Ruling ruling : rulings) {
            table.row(
                    word(ruling), ruling.rule().title(), ruling.where(), value(ruling), limit(ruling), margin(ruling));
        }
        return table.text();
    }

    /**
     * What each rests on and who says so; marked where it does not hold or cannot be judged, with what to do.
     *
     * @param advice what to do about a ruling that does not hold or is not known, in a sentence; empty for nothing
     */
    public static String notes(List<Ruling> rulings, Function<Ruling, String> advice) {
        StringBuilder text = new StringBuilder();
        Paragraphs paragraphs = new Paragraphs(text);
        for (Ruling ruling : rulings) {
            String mark =
                    switch (ruling.standing()) {
                        case HOLDS -> "  - ";
                        case BROKEN -> "  ! ";
                        case UNKNOWN -> "  ? ";
                    };
            String whatToDo = ruling.standing() == Ruling.Standing.HOLDS ? "" : advice.apply(ruling);
            paragraphs.add(
                    mark,
                    sentence(ruling.rule().title() + ": " + ruling.basis()) + (whatToDo.isEmpty() ? "" : " " + whatToDo)
                            + " [" + ruling.rule().source() + "]");
        }
        return text.toString();
    }

    private static String sentence(String words) {
        return words.endsWith(".") ? words : words + ".";
    }
}
