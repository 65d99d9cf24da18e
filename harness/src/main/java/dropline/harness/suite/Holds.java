package dropline.harness.suite;

import dropline.harness.suite.Breach.Rule;
import dropline.harness.suite.RunOutcome.Judged;
import dropline.harness.verdict.ControlResult;
import dropline.harness.verdict.Outcome;
import dropline.harness.verdict.PanelResult;
import dropline.harness.verdict.ReplayResult;
import dropline.harness.verdict.SegmentResult;
import java.util.ArrayList;
import java.util.List;

/**
 * What a run is held to.
 *
 * @param budgets every panel and control keeps within its budget
 * @param controls no move of a control is lost
 * @param cycleNanos the slowest round of polls on any segment, ns; {@link #ANY} for no limit
 */
public record Holds(boolean budgets, boolean controls, long cycleNanos) {
    /** No limit for rounds of polls. */
    static final long ANY = Long.MAX_VALUE;

    /** What became of the run that has this name in its suite. */
    public RunOutcome judge(String run, ReplayResult result) {
        List<Breach> breaches = new ArrayList<>();
        int panels = budgets ? panels(result, breaches) : 0;
        int moved = budgets || controls ? controls(result, breaches) : 0;
        int segments = cycleNanos == ANY ? 0 : segments(result, breaches);
        return new RunOutcome(
                run, result.seed(), result.digest(), result.caveats(), new Judged(panels, moved, segments), breaches);
    }

    private static int panels(ReplayResult result, List<Breach> breaches) {
        int judged = 0;
        for (PanelResult panel : result.panels()) {
            boolean late = panel.verdict().marginNanos() < 0;
            if (panel.verdict().outcome() == Outcome.FAIL) {
                breaches.add(new Breach(
                        late ? Rule.UPDATE : Rule.SHOWN,
                        panel.panel(),
                        panel.verdict().valueNanos(),
                        panel.budgetNanos()));
            }
            judged += panel.verdict().outcome() == Outcome.UNDECIDED ? 0 : 1;
        }
        return judged;
    }

    /** A control that loses moves may be in time with the others: each is asked for by a key of its own. */
    private int controls(ReplayResult result, List<Breach> breaches) {
        int judged = 0;
        for (ControlResult control : result.controls()) {
            if (budgets && control.verdict().marginNanos() < 0) {
                breaches.add(new Breach(
                        Rule.CONTROL, control.control(), control.verdict().valueNanos(), control.budgetNanos()));
            }
            if (controls && control.lostSteps() > 0) {
                breaches.add(new Breach(Rule.LOST, control.control(), control.lostSteps(), 0));
            }
            judged += control.verdict().outcome() == Outcome.UNDECIDED ? 0 : 1;
        }
        return judged;
    }

    private int segments(ReplayResult result, List<Breach> breaches) {
        int judged = 0;
        for (SegmentResult segment : result.segments()) {
            if (segment.pollCycle().count() > 0) {
                judged++;
                if (segment.pollCycle().maxNanos() > cycleNanos) {
                    breaches.add(new Breach(
                            Rule.CYCLE, segment.segment(), segment.pollCycle().maxNanos(), cycleNanos));
                }
            }
        }
        return judged;
    }
}
