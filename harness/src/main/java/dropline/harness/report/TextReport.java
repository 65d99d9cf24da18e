package dropline.harness.report;

import dropline.harness.verdict.Advice;
import dropline.harness.verdict.ControlResult;
import dropline.harness.verdict.InjectedFault;
import dropline.harness.verdict.Outcome;
import dropline.harness.verdict.PanelResult;
import dropline.harness.verdict.ReplayResult;
import dropline.harness.verdict.RestsOn;
import dropline.harness.verdict.SegmentResult;
import dropline.harness.verdict.SingleFailure;
import java.util.ArrayList;
import java.util.List;

/**
 * A result as plain text: sentences first, then tables. Nothing but ASCII save for the names in the user's own files.
 */
public final class TextReport {
    private final ReplayResult result;
    private final StringBuilder text = new StringBuilder();

    private TextReport(ReplayResult result) {
        this.result = result;
    }

    /** The whole text, ending with an end of line. */
    public static String of(ReplayResult result) {
        return new TextReport(result).whole();
    }

    private String whole() {
        faults();
        sentences();
        text.append(FindingText.of(result.findings()));
        advice();
        panels();
        controls();
        segments();
        singleFailures();
        foot();
        return text.toString();
    }

    private void faults() {
        for (InjectedFault fault : result.faults()) {
            paragraph("", "Injected: " + fault.fault() + ".");
        }
        if (!result.faults().isEmpty()) {
            text.append('\n');
        }
    }

    private void sentences() {
        paragraph("", Figures.word(result.outcome()).toUpperCase(java.util.Locale.ROOT) + ". " + result.headline());
        for (String sentence : result.sentences().subList(1, result.sentences().size())) {
            paragraph("", sentence);
        }
    }

    private void advice() {
        if (result.advice().isEmpty()) {
            return;
        }
        heading("What to do");
        int number = 1;
        for (Advice advice : result.advice()) {
            paragraph("  " + number++ + ". ", advice.about() + ": " + advice.sentence());
        }
    }

    private void panels() {
        TextTable table = new TextTable(
                "verdict",
                "panel",
                "segment",
                ">updates",
                ">half by",
                ">99 of 100",
                ">slowest",
                ">at worst",
                ">limit",
                ">margin",
                "mostly");
        for (PanelResult panel : result.panels()) {
            boolean used = panel.verdict().outcome() != Outcome.UNDECIDED;
            table.row(
                    Figures.word(panel.verdict().outcome()),
                    panel.panel(),
                    panel.segment(),
                    Figures.count(panel.updateLatency().count()),
                    used ? Figures.time(panel.updateLatency().p50Nanos()) : "-",
                    used ? Figures.time(panel.updateLatency().p99Nanos()) : "-",
                    used ? Figures.time(panel.updateLatency().maxNanos()) : "-",
                    Figures.atWorst(panel.atWorst()),
                    Figures.time(panel.budgetNanos()),
                    used ? Figures.margin(panel.verdict().marginNanos()) : "-",
                    panel.worst() == null
                            ? "-"
                            : panel.worst().stages().longest().words());
        }
        section("Panels, least margin first: state change to the panel showing it", table);
    }

    private void controls() {
        TextTable table = new TextTable(
                "verdict",
                "control",
                "panel",
                ">moves",
                ">half by",
                ">slowest",
                ">at worst",
                ">limit",
                ">margin",
                ">lost");
        for (ControlResult control : result.controls()) {
            boolean used = control.verdict().outcome() != Outcome.UNDECIDED;
            table.row(
                    Figures.word(control.verdict().outcome()),
                    control.control(),
                    control.panel(),
                    Figures.count(control.moves()),
                    used ? Figures.time(control.controlLatency().p50Nanos()) : "-",
                    used ? Figures.time(control.controlLatency().maxNanos()) : "-",
                    Figures.atWorst(control.atWorst()),
                    Figures.time(control.budgetNanos()),
                    used ? Figures.margin(control.verdict().marginNanos()) : "-",
                    Figures.count(control.lostSteps()));
        }
        section("Controls: moved to the host knowing it", table);
    }

    private void segments() {
        TextTable table = new TextTable(
                "segment",
                "speed",
                ">nodes",
                ">busy",
                ">cycle mean",
                ">99 of 100",
                ">slowest",
                ">at worst",
                ">polls",
                ">retried",
                ">given up",
                ">clashes",
                ">overruns");
        for (SegmentResult segment : result.segments()) {
            table.row(
                    segment.segment(),
                    Figures.count(segment.baud()) + " baud " + segment.format(),
                    Integer.toString(segment.nodes()),
                    Figures.percent(segment.utilisation()),
                    Figures.time(segment.pollCycle().meanNanos()),
                    Figures.time(segment.pollCycle().p99Nanos()),
                    Figures.time(segment.pollCycle().maxNanos()),
                    Figures.atWorst(segment.pollCycleAtWorst()),
                    Figures.count(segment.asked()),
                    Figures.count(segment.retried()),
                    Figures.count(segment.gaveUp()),
                    Figures.count(segment.clashes()),
                    Figures.count(segment.overruns()));
        }
        section("Segments: time on the wire and poll cycles", table);
    }

    private void singleFailures() {
        TextTable table = new TextTable(
                "the others",
                "dead node",
                "segment",
                ">cycle then",
                ">cycle healthy",
                "silent panels",
                "panels that then miss");
        for (SingleFailure failure : result.singleFailures()) {
            table.row(
                    Figures.word(failure.outcome()),
                    failure.node(),
                    failure.segment(),
                    Figures.time(failure.pollCycleMeanNanos()),
                    Figures.time(failure.healthyPollCycleMeanNanos()),
                    String.join(", ", failure.silentPanels()),
                    thenMiss(failure));
        }
        section("With one node dead: how the panels on other nodes fare", table);
    }

    /** The panels that miss their limit only while this node is dead, in words. */
    static String thenMiss(SingleFailure failure) {
        List<String> names = new ArrayList<>();
        boolean missedAnyway = false;
        for (SingleFailure.PanelThen then : failure.panels()) {
            boolean before = then.healthyVerdict().outcome() == Outcome.FAIL;
            if (then.verdict().outcome() == Outcome.FAIL && !before) {
                names.add(then.panel());
            }
            missedAnyway |= before;
        }
        String none = missedAnyway ? "none more than before" : "none";
        return names.isEmpty() ? none : String.join(", ", names);
    }

    private void foot() {
        heading("What the figures rest on");
        for (String caveat : result.caveats()) {
            paragraph("  - ", caveat);
        }
        for (String source : result.budgetSources()) {
            paragraph("  - ", "Limits: " + source);
        }
        RestsOn restsOn = result.restsOn();
        if (restsOn != null) {
            restsOn.sentences().forEach(sentence -> paragraph("  - ", sentence));
        }
        text.append('\n');
        paragraph(
                "",
                "Pit " + result.pit() + ", " + result.recording().name() + ", "
                        + Figures.duration(result.recording().durationNanos()) + ", seed " + result.seed()
                        + ", digest " + result.digest() + ".");
    }

    private void section(String title, TextTable table) {
        if (!table.isEmpty()) {
            heading(title);
            text.append(table.text());
        }
    }

    private void heading(String title) {
        text.append('\n').append(title).append('\n');
    }

    private void paragraph(String mark, String words) {
        new Paragraphs(text).add(mark, words);
    }
}
