package dropline.harness.planned;

import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.rule.Ruling;
import dropline.harness.plan.PlanResult;
import dropline.harness.plan.PlanResult.Move;
import dropline.harness.plan.PlanResult.PlannedSegment;
import dropline.harness.plan.PlanResult.Weight;
import dropline.harness.report.Figures;
import dropline.harness.report.Paragraphs;
import dropline.harness.report.TextTable;
import dropline.harness.ruling.RulingText;
import dropline.harness.size.Fared;
import dropline.harness.size.Tight;
import dropline.harness.wiring.Cautions;
import java.util.ArrayList;
import java.util.List;

/** A plan as plain text: the answer first, then segment by segment, then what moves and what to buy. */
public final class PlanText {
    private final PlanResult result;
    private final StringBuilder text = new StringBuilder();

    private PlanText(PlanResult result) {
        this.result = result;
    }

    /** The whole text, ending with an end of line. */
    public static String of(PlanResult result) {
        return new PlanText(result).whole();
    }

    private String whole() {
        result.sentences().forEach(sentence -> paragraph("", sentence));
        segments();
        listed("What is set otherwise", settings(result));
        moves();
        rules("Broken rules that no plan mends", result.broken());
        rules("Guidance the plan does not follow", result.guidance());
        shopping();
        foot();
        return text.toString();
    }

    private void segments() {
        TextTable table = new TextTable(
                "segment",
                ">baud",
                "state",
                ">boards",
                ">panels",
                "nearest its limit",
                ">slowest",
                ">bound",
                ">limit",
                ">left");
        for (PlannedSegment segment : result.segments()) {
            Tight tight = segment.tightest();
            Fared fared = tight == null ? null : tight.fared();
            table.row(
                    segment.name(),
                    Figures.count(segment.baud()),
                    word(segment.state()),
                    Figures.count(segment.nodes()),
                    Figures.count(segment.panels()),
                    fared == null ? "nothing moved" : fared.name(),
                    fared == null ? "-" : Figures.time(fared.worstNanos()),
                    tight == null || !tight.isBounded() ? "none" : Figures.time(tight.boundNanos()),
                    fared == null ? "-" : Figures.time(fared.limitNanos()),
                    fared == null ? "-" : Figures.percent(1 - fared.share()));
        }
        section("The segments", table);
        paragraph(
                "  ",
                "slowest: in any run, with any one board dead; bound: what it can never exceed, from stated maxima, if"
                        + " its segment is alone; none where something has no stated maximum.");
        for (PlannedSegment segment : result.segments()) {
            Tight tight = segment.tightest();
            if (tight != null) {
                paragraph("  ", segment.name() + ": what limits it is " + why(tight) + ".");
            }
        }
    }

    static String why(Tight tight) {
        return tight.fared().name()
                + (tight.fared().mostly() == null
                        ? ""
                        : ", mostly " + tight.fared().mostly().words())
                + (tight.deadNode() == null ? "" : ", with " + tight.deadNode() + " dead");
    }

    static String word(StateDelivery state) {
        return state == StateDelivery.BROADCAST ? "broadcast" : "addressed";
    }

    /** What is set otherwise than now, a sentence each. */
    static List<String> settings(PlanResult result) {
        List<String> lines = new ArrayList<>();
        for (PlannedSegment segment : result.segments()) {
            String of = segment.like() == null ? segment.name() : segment.name() + ", like " + segment.like() + ",";
            if (segment.baud() != segment.baudBefore()) {
                lines.add(of + " runs at " + Figures.count(segment.baud()) + " baud, not "
                        + Figures.count(segment.baudBefore()) + ": set its controller and every board on it.");
            }
            if (segment.timeOutNanos() != segment.timeOutBeforeNanos()) {
                lines.add(of + " waits " + Figures.time(segment.timeOutNanos()) + " for a reply, not "
                        + Figures.time(segment.timeOutBeforeNanos()) + ".");
            }
            if (segment.state() != segment.stateBefore()) {
                lines.add(
                        of + " gets its state " + word(segment.state()) + ", not " + word(segment.stateBefore()) + ".");
            }
            if (!segment.polledOtherwise().isEmpty()) {
                lines.add(of + " polls by limit, in a cycle: " + weights(segment.polledOtherwise()) + ".");
            }
        }
        return lines;
    }

    private static String weights(List<Weight> weights) {
        return String.join(
                ", ",
                weights.stream()
                        .map(one -> one.node() + " " + one.weight() + "x")
                        .toList());
    }

    private void moves() {
        TextTable table = new TextTable("board", "from", "to", ">address", "its panels");
        for (Move move : result.moves()) {
            table.row(
                    move.node(),
                    move.from(),
                    move.to(),
                    move.address() == move.addressBefore()
                            ? Integer.toString(move.address())
                            : move.addressBefore() + " -> " + move.address(),
                    String.join(", ", move.panels()));
        }
        section("What moves", table);
        listed("No longer needed", result.dropped());
    }

    private void rules(String title, List<Ruling> rulings) {
        if (!rulings.isEmpty()) {
            text.append('\n').append(title).append('\n').append(RulingText.table(rulings));
            text.append(RulingText.notes(rulings, ruling -> ""));
        }
    }

    private void shopping() {
        listed("What to buy", new ShoppingWords(result.toBuy()).all());
        if (result.toBuy() != null) {
            text.append('\n').append("Before you wire anything").append('\n');
            Cautions.LINES.forEach(line -> paragraph("  - ", line));
        }
    }

    private void foot() {
        text.append('\n').append("What the plan rests on").append('\n');
        caveats(result).forEach(caveat -> paragraph("  - ", caveat));
        text.append('\n');
        paragraph(
                "",
                "Pit " + result.pit() + ", " + result.recording().name() + ", "
                        + Figures.duration(result.recording().durationNanos()) + ", "
                        + Figures.plural(result.seeds(), "seed") + " from " + result.seed() + ", "
                        + Figures.plural(result.runs(), "run")
                        + (result.digest().isEmpty() ? "" : ", digest " + result.digest()) + ".");
    }

    /** What the plan rests on, a sentence each. */
    static List<String> caveats(PlanResult result) {
        List<String> caveats = new ArrayList<>(List.of(
                "Boards, wire and panels are modelled from the pit file; nothing was measured on a real board.",
                "A board moves with all its panels and keeps its supply. Boards share a segment only if they speak the"
                        + " same protocol in the same characters; those straight on USB stay where they are.",
                "At another baud rate each clock makes the nearest rate it can, and time-outs follow the length of a"
                        + " reply; whether firmware and transceivers can run at it is yours to check.",
                "A board that comes to a segment is taken to be the last on its cable, at the distance written for it;"
                        + " measure the new route. A further segment is taken to be made and fitted like the one it"
                        + " follows, and to share its hub board if it has one.",
                "Near each other is what has the same place: in the pit file, and then what has the same words before"
                        + " its first comma.",
                "Electrical figures are planning aids. Fuses and what current a wire may carry are not computed: go by"
                        + " your local codes and the wire's maker.",
                "Leave a fifth of time, amperes, ports and addresses free (common practice): one more panel always"
                        + " comes."));
        caveats.addAll(result.restsOn().sentences());
        return caveats;
    }

    private void listed(String title, List<String> lines) {
        if (!lines.isEmpty()) {
            text.append('\n').append(title).append('\n');
            lines.forEach(line -> paragraph("  - ", line));
        }
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
