package dropline.harness.sized;

import dropline.bus.clock.BaudStanding;
import dropline.harness.report.Figures;
import dropline.harness.report.Paragraphs;
import dropline.harness.report.TextTable;
import dropline.harness.size.BaudCurve;
import dropline.harness.size.BaudCurve.Misfit;
import dropline.harness.size.BaudCurve.Point;
import dropline.harness.size.SizeResult;
import dropline.harness.size.SizeResult.Buys;
import dropline.harness.size.SizeResult.GuessedNumber;
import dropline.harness.size.Tight;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A sizing as plain text: the number first, then what it means, then tables. */
public final class SizeText {
    private static final int MOST_POINTS = 8;

    private final SizeResult result;
    private final StringBuilder text = new StringBuilder();

    private SizeText(SizeResult result) {
        this.result = result;
    }

    /** The whole text, ending with an end of line. */
    public static String of(SizeResult result) {
        return new SizeText(result).whole();
    }

    private String whole() {
        result.sentences().forEach(sentence -> paragraph("", sentence));
        rates();
        growth();
        buys();
        guesses();
        foot();
        return text.toString();
    }

    private void rates() {
        TextTable table =
                new TextTable(">baud", ">further", ">dearer from", ">no adapter", "what one more brings beyond");
        for (BaudCurve curve : result.curves()) {
            table.row(
                    Figures.count(curve.baud()),
                    number(curve.more()),
                    curve.knee() < 0 ? "-" : Figures.count(curve.knee()),
                    number(curve.withoutAdapter()),
                    words(curve.beyond()));
        }
        section("Baud rates: further panels at each, in one seed", table);
        for (BaudCurve curve : result.curves()) {
            if (!curve.misfits().isEmpty()) {
                paragraph("  ", misfits(curve));
            }
        }
    }

    /** {@code none} stands for no more, {@code unfit} for not even those there. */
    static String number(int more) {
        return more < 0 ? "unfit" : more == 0 ? "none" : Figures.count(more);
    }

    static String words(@Nullable Tight tight) {
        if (tight == null) {
            return "every address is used";
        }
        return tight.fared().name() + (tight.deadNode() == null ? "" : ", " + tight.deadNode() + " dead");
    }

    /** Whose UART is off at a rate, in words. */
    static String misfits(BaudCurve curve) {
        Misfit worst = curve.misfits().get(0);
        for (Misfit misfit : curve.misfits()) {
            worst = Math.abs(misfit.error()) > Math.abs(worst.error()) ? misfit : worst;
        }
        int others = curve.misfits().size() - 1;
        return "At " + Figures.count(curve.baud()) + " baud the clock of " + worst.node()
                + (others == 0 ? "" : " and " + Figures.plural(others, "other board")) + " comes no nearer than "
                + (worst.error() > 0 ? "+" : "") + Figures.percent(worst.error())
                + (worst.standing() == BaudStanding.OFF
                        ? ": more than the 2% that others must take (MODBUS over serial line V1.02, 3.2)."
                        : ": more than the 1% within which one should send (MODBUS over serial line V1.02, 3.2).");
    }

    private void growth() {
        TextTable table = new TextTable(">further", "nearest its limit", ">99 of 100", ">slowest", ">limit", ">used");
        for (BaudCurve curve : result.curves()) {
            if (curve.baud() == result.baud()) {
                for (Point point : some(curve)) {
                    table.row(
                            Figures.count(point.more()),
                            point.name(),
                            Figures.time(point.p99Nanos()),
                            Figures.time(point.worstNanos()),
                            Figures.time(point.limitNanos()),
                            Figures.percent(point.share()));
                }
            }
        }
        section("At " + Figures.count(result.baud()) + " baud, with every board alive", table);
    }

    /** Points that stand for a curve: its ends, where it stops and what follows, and some between. */
    private static List<Point> some(BaudCurve curve) {
        List<Point> some = new ArrayList<>();
        List<Point> points = curve.points();
        int apart =
                points.isEmpty() ? 1 : Math.max(1, points.get(points.size() - 1).more() / MOST_POINTS);
        for (Point point : points) {
            boolean far =
                    some.isEmpty() || point.more() - some.get(some.size() - 1).more() >= apart;
            if (far || point.more() == curve.more() || point.more() == curve.more() + 1) {
                some.add(point);
            }
        }
        return some;
    }

    private void buys() {
        TextTable table = new TextTable(">further", "change");
        for (Buys buys : result.buys()) {
            table.row(number(buys.more()), buys.change());
        }
        if (!table.isEmpty()) {
            table.row(number(result.time().inFirstSeed()), "none: as it stands");
        }
        section("What would help: further panels after one change alone, in one seed", table);
    }

    private void guesses() {
        if (result.guesses().size() > 1) {
            text.append('\n').append("Guesses that matter as well").append('\n');
        }
        for (GuessedNumber guess : result.guesses()
                .subList(Math.min(1, result.guesses().size()), result.guesses().size())) {
            paragraph(
                    "  - ",
                    guess.figure() + ", about " + guess.text() + " (" + guess.where() + "): "
                            + (guess.half() == null ? "" : number(guess.half()) + " at half")
                            + (guess.half() == null || guess.twice() == null ? "" : ", ")
                            + (guess.twice() == null ? "" : number(guess.twice()) + " at double") + ".");
        }
    }

    private void foot() {
        text.append('\n').append("What the figures rest on").append('\n');
        caveats(result).forEach(caveat -> paragraph("  - ", caveat));
        text.append('\n');
        paragraph(
                "",
                "Pit " + result.pit() + ", " + result.recording().name() + ", "
                        + Figures.duration(result.recording().durationNanos()) + ", "
                        + Figures.plural(result.seeds(), "seed") + " from " + result.seed() + ".");
    }

    /** What the figures rest on, a sentence each. */
    static List<String> caveats(SizeResult result) {
        List<String> caveats = new ArrayList<>(List.of(
                "Nodes, wire and panels are modelled from the pit file; nothing was measured on a real board.",
                "What is added: " + added(result) + ", in turn, each on a further board like the one that carries it"
                        + " now, with signals of its own that change whenever the original's do.",
                "At other baud rates each clock makes the nearest rate it can and time-outs follow the length of a"
                        + " reply; reply gaps stay. They are tried on the busiest stretch, in one seed, healthy and"
                        + " with the board dead that matters most.",
                "Leave a fifth of time, amperes and addresses free (common practice): one more panel always comes."));
        caveats.addAll(result.restsOn().sentences());
        return caveats;
    }

    private static String added(SizeResult result) {
        int shown = Math.min(4, result.adding().size());
        int rest = result.adding().size() - shown;
        return "copies of " + String.join(", ", result.adding().subList(0, shown))
                + (rest == 0 ? "" : " and " + rest + " more");
    }

    private void section(String title, TextTable table) {
        if (!table.isEmpty()) {
            text.append('\n').append(title).append('\n').append(table.text());
        }
    }

    private void paragraph(String mark, String words) {
        new Paragraphs(text).add(mark, words);
    }
}
