package dropline.harness.size;

import dropline.bus.pit.Layout;
import dropline.harness.measure.BusMeasure;
import dropline.harness.measure.ControlMeasure;
import dropline.harness.measure.PanelMeasure;
import dropline.harness.measure.SegmentMeasures;
import dropline.harness.measure.SlotMeasure;
import dropline.harness.measure.Times;
import dropline.harness.verdict.Stage;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * How a segment fared in one run.
 *
 * @param each its panels and controls, in the order of the pit; without those of a dead node
 * @param cycleMeanNanos mean poll cycle, ns
 * @param cycleWorstNanos longest poll cycle, ns
 * @param busy share of the time in which a frame was on the wire
 * @param whole whether the run went to its end; one that was broken off had missed a budget by then
 */
public record Fare(List<Fared> each, long cycleMeanNanos, long cycleWorstNanos, double busy, boolean whole) {
    public Fare {
        each = List.copyOf(each);
    }

    /** Of a run that has ended; {@code dead} is the dead node's index in the layout, -1 for none. */
    static Fare of(SegmentMeasures measures, int dead) {
        List<Fared> each = new ArrayList<>();
        for (PanelMeasure panel : measures.panels()) {
            if (panel.node() != dead) {
                each.add(panel(panel));
            }
        }
        for (ControlMeasure control : measures.controls()) {
            if (control.place().node() != dead) {
                each.add(control(control));
            }
        }
        BusMeasure bus = measures.bus();
        return new Fare(
                each, bus.cycles().meanNanos(), bus.cycles().maxNanos(), bus.utilisation(), measures.endNanos() > 0);
    }

    private static Fared panel(PanelMeasure panel) {
        Times times = new Times();
        long open = 0;
        long lost = 0;
        for (SlotMeasure slot : panel.slots()) {
            times.addAll(slot.latency());
            open = Math.max(open, slot.openNanos());
            lost += slot.lost();
        }
        return new Fared(
                panel.panel().name(),
                false,
                panel.node(),
                times.count(),
                times.percentileNanos(99),
                Math.max(times.maxNanos(), open),
                panel.panel().budget().updateNanos(),
                lost,
                false,
                mostly(panel));
    }

    private static @Nullable Stage mostly(PanelMeasure panel) {
        if (panel.slowest() == null) {
            return null;
        }
        Stage longest = Stage.HOST;
        long most = -1;
        for (Stage stage : Stage.values()) {
            long nanos = panel.cutNanos(stage.ordinal() + 1) - panel.cutNanos(stage.ordinal());
            if (nanos > most) {
                most = nanos;
                longest = stage;
            }
        }
        return longest;
    }

    private static Fared control(ControlMeasure control) {
        Layout.ControlPlace place = control.place();
        Times times = control.latency();
        return new Fared(
                place.control().name(),
                true,
                place.node(),
                times.count(),
                times.percentileNanos(99),
                Math.max(times.maxNanos(), control.openNanos()),
                place.panel().budget().controlNanos(),
                control.lostSteps(),
                false,
                null);
    }

    /** The one nearest to its budget, or farthest beyond it, what is lost before all; empty where nothing moved. */
    public Optional<Fared> tightest() {
        return each.stream()
                .max(Comparator.comparing((Fared one) -> one.lost() > 0).thenComparing(Fared::share));
    }

    /** Whether each keeps its budget with this much of it to spare. */
    public boolean keeps(double margin) {
        return each.stream().allMatch(one -> one.keeps(margin));
    }

    /** Without those that do not count, and with those judged against their whole budget that are to be. */
    public Fare with(Aside aside) {
        return aside.isEmpty()
                ? this
                : new Fare(
                        each.stream()
                                .filter(one -> !aside.isOut(one.name(), one.control()))
                                .map(one -> aside.isWhole(one.name(), one.control()) ? one.judgedWhole() : one)
                                .toList(),
                        cycleMeanNanos,
                        cycleWorstNanos,
                        busy,
                        whole);
    }
}
