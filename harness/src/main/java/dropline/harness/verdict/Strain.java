package dropline.harness.verdict;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.harness.measure.ControlMeasure;
import dropline.harness.measure.PanelMeasure;
import dropline.harness.measure.SegmentMeasures;
import java.util.ArrayList;
import java.util.List;

/**
 * How near the panels and controls of a segment came to their limits in a run: what there is to compare between runs of
 * one stretch.
 *
 * @param failing how many missed their limit
 * @param share the slowest latency of the one nearest its limit, as a share of that limit
 * @param tightest its name; empty where nothing was updated or moved
 */
public record Strain(int failing, double share, String tightest) {

    /** Of a segment whose run has ended. */
    public static Strain of(Pit pit, Layout layout, SegmentMeasures measures) {
        Judge judge = new Judge(pit, layout, 0);
        List<Strain> each = new ArrayList<>();
        for (PanelMeasure panel : measures.panels()) {
            PanelResult result = judge.panel(panel);
            each.add(of(result.verdict(), result.panel()));
        }
        for (ControlMeasure control : measures.controls()) {
            ControlResult result = judge.control(control);
            each.add(of(result.verdict(), result.control()));
        }
        return together(each);
    }

    /** Of several segments. */
    public static Strain together(List<Strain> each) {
        Strain all = new Strain(0, 0, "");
        for (Strain strain : each) {
            Strain tighter = strain.share > all.share ? strain : all;
            all = new Strain(all.failing + strain.failing, tighter.share, tighter.tightest);
        }
        return all;
    }

    private static Strain of(Verdict verdict, String name) {
        boolean judged = verdict.outcome() != Outcome.UNDECIDED;
        double share = judged ? (double) verdict.valueNanos() / verdict.limitNanos() : 0;
        return new Strain(verdict.outcome() == Outcome.FAIL ? 1 : 0, share, name);
    }
}
