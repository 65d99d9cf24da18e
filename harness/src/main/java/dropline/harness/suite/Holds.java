package dropline.harness.suite;

import dropline.bus.fault.Fault;
import dropline.bus.pit.Pit;
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
 * @param cycleNanos the slowest round of polls on any segment, ns; {@link Within#ANY} for no limit
 * @param within how soon what is watched must be so
 */
public record Holds(boolean budgets, boolean controls, long cycleNanos, Within within) {

    /** Watches a run for what its figures will not tell. */
    public Watch watch(Pit pit, List<Fault> faults) {
        return new Watch(pit, faults, within);
    }

    /**
     * What became of the run that has this name in its suite.
     *
     * @param watch of that very run
     * @param after what went wrong in it, where faults are tried in turn; empty otherwise
     */
    public RunOutcome judge(String run, ReplayResult result, Watch watch, String after) {
        List<Breach> breaches = new ArrayList<>();
        int panels = budgets ? panels(result, after, breaches) : 0;
        int moved = budgets || controls ? controls(result, after, breaches) : 0;
        int segments = cycleNanos == Within.ANY ? 0 : segments(result, after, breaches);
        breaches.addAll(watch.breaches(after));
        Judged judged = new Judged(panels, moved, segments, 0).or(watch.judged());
        return new RunOutcome(run, result.seed(), result.digest(), result.caveats(), judged, 1, breaches);
    }

    private static int panels(ReplayResult result, String after, List<Breach> breaches) {
        int judged = 0;
        for (PanelResult panel : result.panels()) {
            boolean late = panel.verdict().marginNanos() < 0;
            if (panel.verdict().outcome() == Outcome.FAIL) {
                breaches.add(new Breach(
                        late ? Rule.UPDATE : Rule.SHOWN,
                        panel.panel(),
                        panel.verdict().valueNanos(),
                        panel.budgetNanos(),
                        after));
            }
            judged += panel.verdict().outcome() == Outcome.UNDECIDED ? 0 : 1;
        }
        return judged;
    }

    /** A control that loses moves may be in time with the others: each is asked for by a key of its own. */
    private int controls(ReplayResult result, String after, List<Breach> breaches) {
        int judged = 0;
        for (ControlResult control : result.controls()) {
            if (budgets && control.verdict().marginNanos() < 0) {
                breaches.add(new Breach(
                        Rule.CONTROL, control.control(), control.verdict().valueNanos(), control.budgetNanos(), after));
            }
            if (controls && control.lostSteps() > 0) {
                breaches.add(new Breach(Rule.LOST, control.control(), control.lostSteps(), 0, after));
            }
            judged += control.verdict().outcome() == Outcome.UNDECIDED ? 0 : 1;
        }
        return judged;
    }

    private int segments(ReplayResult result, String after, List<Breach> breaches) {
        int judged = 0;
        for (SegmentResult segment : result.segments()) {
            if (segment.pollCycle().count() > 0) {
                judged++;
                if (segment.pollCycle().maxNanos() > cycleNanos) {
                    breaches.add(new Breach(
                            Rule.CYCLE, segment.segment(), segment.pollCycle().maxNanos(), cycleNanos, after));
                }
            }
        }
        return judged;
    }
}
