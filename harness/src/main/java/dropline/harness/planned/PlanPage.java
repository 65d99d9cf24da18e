package dropline.harness.planned;

import dropline.bus.rule.Ruling;
import dropline.harness.plan.PlanResult;
import dropline.harness.plan.PlanResult.PlannedSegment;
import dropline.harness.report.Figures;
import dropline.harness.wiring.Cautions;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.util.ArrayList;
import java.util.List;

/** A plan laid out as a page. */
public record PlanPage(PlanResult result) {

    /** The page as one HTML file that needs no network and no script. The same plan gives the same bytes. */
    public static String html(PlanResult result) {
        StringOutput html = new StringOutput(1 << 14);
        TemplateEngine.createPrecompiled(ContentType.Html).render("plan.jte", new PlanPage(result), html);
        return html.toString();
    }

    /** How it came out: a class of the style sheet. */
    public String outcome() {
        return result.passes() ? "pass" : "fail";
    }

    /** How state reaches a segment's boards, in a word. */
    public String state(PlannedSegment segment) {
        return PlanText.word(segment.state());
    }

    /** What limits a segment, and when. */
    public String limitedBy(PlannedSegment segment) {
        return segment.tightest() == null ? "nothing moved" : PlanText.why(segment.tightest());
    }

    /** Its slowest time, with its limit. */
    public String slowest(PlannedSegment segment) {
        return segment.tightest() == null
                ? "-"
                : Figures.time(segment.tightest().fared().worstNanos()) + " of "
                        + Figures.time(segment.tightest().fared().limitNanos());
    }

    /** What of the limit is left. */
    public String left(PlannedSegment segment) {
        return segment.tightest() == null
                ? "-"
                : Figures.percent(1 - segment.tightest().fared().share());
    }

    /** What is set otherwise than now, a sentence each. */
    public List<String> settings() {
        return PlanText.settings(result);
    }

    /** Rules that do not hold, laws first. */
    public List<Ruling> rulings() {
        List<Ruling> all = new ArrayList<>(result.broken());
        all.addAll(result.guidance());
        return all;
    }

    /** What to buy, a sentence each. */
    public List<String> toBuy() {
        return new ShoppingWords(result.toBuy()).all();
    }

    /** What stands above everything that tells people to touch wires. */
    public List<String> cautions() {
        return Cautions.LINES;
    }

    /** What it rests on, a sentence each. */
    public List<String> caveats() {
        return PlanText.caveats(result);
    }
}
