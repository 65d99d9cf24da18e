package dropline.harness.power;

import dropline.bus.rule.Ruling;
import dropline.bus.rule.Unit;
import dropline.bus.supply.State;
import dropline.harness.report.Figures;
import dropline.harness.ruling.Amounts;
import dropline.harness.wiring.Cautions;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.util.ArrayList;
import java.util.List;

/**
 * What the supplies of a pit come to, laid out as a page.
 *
 * @param tree the supplies and their runs, drawn
 * @param charts what each supply gave over the flight; empty without one
 */
public record PowerPage(PowerResult result, TreeDrawing tree, List<CurrentChart> charts) {
    public PowerPage {
        charts = List.copyOf(charts);
    }

    /** The page as one HTML file that needs no network and no script. */
    public static String html(PowerResult result) {
        StringOutput html = new StringOutput(1 << 16);
        TemplateEngine.createPrecompiled(ContentType.Html).render("power.jte", of(result), html);
        return html.toString();
    }

    static PowerPage of(PowerResult result) {
        List<CurrentChart> charts = new ArrayList<>();
        Flight flight = result.flight();
        if (flight != null) {
            result.supplies().forEach(supply -> charts.add(CurrentChart.of(supply, flight)));
        }
        return new PowerPage(result, TreeDrawing.of(result), charts);
    }

    /** The answer, a sentence each. */
    public List<String> sentences() {
        return PowerSentences.of(result);
    }

    /** How it came out: a class of the style sheet. */
    public String outcome() {
        boolean open = result.rulings().stream().anyMatch(ruling -> ruling.standing() == Ruling.Standing.UNKNOWN);
        return result.passes() ? "pass" : open ? "undecided" : "fail";
    }

    /** What stands above everything that tells people to touch wires. */
    public List<String> cautions() {
        return Cautions.LINES;
    }

    /** What the states mean. */
    public String states() {
        return PowerSentences.STATES;
    }

    /** What is a model, an assumption, or was not looked at. */
    public List<String> restsOn() {
        return PowerSentences.restsOn(result);
    }

    /** The power-up in sentences; none without one. */
    public List<String> powerUp() {
        PowerUp start = result.powerUp();
        return start == null ? List.of() : PowerSentences.powerUp(start);
    }

    /** What happens on the way, each with its time. */
    public List<List<String>> steps() {
        PowerUp start = result.powerUp();
        return start == null
                ? List.of()
                : start.steps().stream()
                        .map(step -> List.of(Figures.time(step.atNanos()), step.what()))
                        .toList();
    }

    /** The zones in sentences. */
    public List<String> zones() {
        return PowerSentences.zones(result);
    }

    /** What to do about a ruling; empty where it holds. */
    public static String advice(Ruling ruling) {
        return ruling.standing() == Ruling.Standing.HOLDS ? "" : SupplyAdvice.of(ruling);
    }

    /** What flows into a point, by state. */
    public static String amps(PowerResult.Point point, State state) {
        return Amounts.of(point.amps(state), Unit.AMPERES);
    }

    public static String volts(double volts) {
        return Amounts.of(volts, Unit.VOLTS);
    }

    public static String amperes(double amps) {
        return Amounts.of(amps, Unit.AMPERES);
    }

    public static String watts(double watts) {
        return Amounts.of(watts, Unit.WATTS);
    }
}
