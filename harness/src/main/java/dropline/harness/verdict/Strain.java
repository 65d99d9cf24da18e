package dropline.harness.verdict;

import dropline.bus.pit.Layout;
import dropline.harness.measure.ControlMeasure;
import dropline.harness.measure.PanelMeasure;
import dropline.harness.measure.SegmentMeasures;
import dropline.harness.measure.SlotMeasure;
import dropline.harness.measure.Times;
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
    public static Strain of(SegmentMeasures measures) {
        List<Strain> each = new ArrayList<>();
        for (PanelMeasure panel : measures.panels()) {
            Seen seen = new Seen();
            for (SlotMeasure slot : panel.slots()) {
                seen.add(slot.latency(), slot.openNanos(), slot.lost());
            }
            each.add(seen.against(
                    panel.panel().budget().updateNanos(), panel.panel().name()));
        }
        for (ControlMeasure control : measures.controls()) {
            Layout.ControlPlace place = control.place();
            Seen seen = new Seen();
            seen.add(control.latency(), control.openNanos(), control.lostSteps());
            each.add(seen.against(
                    place.panel().budget().controlNanos(), place.control().name()));
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

    /** What a verdict looks at, without the words and figures that {@link Judge} puts beside it. */
    private static final class Seen {
        private long slowestNanos;
        private long lost;
        private long count;

        void add(Times times, long openNanos, long alsoLost) {
            slowestNanos = Math.max(slowestNanos, Math.max(times.maxNanos(), openNanos));
            lost += alsoLost;
            count += times.count();
        }

        Strain against(long limitNanos, String name) {
            boolean fails = lost > 0 || slowestNanos > limitNanos;
            double share = fails || count > 0 ? (double) slowestNanos / limitNanos : 0;
            return new Strain(fails ? 1 : 0, share, name);
        }
    }
}
