package dropline.harness.bound;

import static dropline.harness.bound.RandomParts.MILLI;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.bound.Bound;
import dropline.bus.bound.Obstacle;
import dropline.bus.bound.WorstCase;
import dropline.bus.fault.Fault;
import dropline.bus.host.StateBlock;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Layout;
import dropline.bus.run.LaneRun;
import dropline.harness.measure.ControlMeasure;
import dropline.harness.measure.PanelMeasure;
import dropline.harness.measure.SegmentMeasures;
import dropline.harness.measure.SlotMeasure;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;

/**
 * No sample of a simulated run lies above the closed-form bound, and the bound is of some use. "Just missed": the worst
 * wait is the longest cycle and one's own transaction (elementary).
 */
final class BoundTest {
    private static final int SEGMENTS = Integer.getInteger("dropline.bound.segments", 3000);
    private static final long FIRST = Long.getLong("dropline.bound.first", 1);

    private final List<String> violations = new ArrayList<>();
    private final Looseness looseness = new Looseness();
    private final Map<Obstacle.Kind, Integer> unbounded = new EnumMap<>(Obstacle.Kind.class);
    private int bounded;

    @Test
    void noSampleOfThousandsOfSeededSegmentsLiesAboveItsBound(TestReporter reporter) {
        for (long seed = FIRST; seed < FIRST + SEGMENTS; seed++) {
            check(seed);
        }

        reporter.publishEntry("segments with a bound on their cycle", Integer.toString(bounded));
        reporter.publishEntry("without any bound", unbounded.toString());
        reporter.publishEntry("bound over slowest seen", looseness.toString());
        assertEquals(List.of(), violations);
        for (String kind : List.of("cycle", "cycle, one dead", "update", "update, one dead", "control")) {
            assertTrue(looseness.percentile(kind, 50) < 3, kind + "\n" + looseness);
        }
    }

    private void check(long seed) {
        RandomSegment random = new RandomSegment(seed);
        Layout layout = Layout.of(random.pit);
        WorstCase worst = WorstCase.of(random.pit, 0, random.dead, random.gapNanos);
        Bound cycle = worst.cycle();
        if (cycle.isFinite()) {
            bounded++;
        } else {
            unbounded.merge(Objects.requireNonNull(cycle.obstacle()).kind(), 1, Integer::sum);
            return;
        }
        SegmentMeasures measures = run(random, layout, seed, cycle.nanos());
        String dead = random.dead == WorstCase.NONE ? "" : ", one dead";
        compare(
                seed,
                "cycle" + dead,
                cycle,
                measures.bus().cycles().maxNanos(),
                measures.bus().cycles().count());
        for (PanelMeasure panel : measures.panels()) {
            for (SlotMeasure slot : panel.slots()) {
                Indicator indicator = slot.slot().indicator();
                Bound bound = worst.update(panel.node(), indicator, slot.slot().signal());
                long slowest = Math.max(slot.latency().maxNanos(), slot.openNanos());
                compare(seed, "update" + dead, bound, slowest, slot.latency().count());
                compare(
                        seed,
                        "update " + indicator.kind(),
                        bound,
                        slowest,
                        slot.latency().count());
            }
        }
        for (ControlMeasure control : measures.controls()) {
            Bound bound = worst.control(control.place().node(), control.place().control());
            long slowest = Math.max(control.latency().maxNanos(), control.openNanos());
            compare(seed, "control", bound, slowest, control.latency().count());
        }
    }

    private void compare(long seed, String kind, Bound bound, long slowestNanos, long samples) {
        if (bound.isFinite() && slowestNanos > bound.nanos()) {
            violations.add("seed " + seed + ": " + kind + " took " + slowestNanos + " ns, bound " + bound);
        }
        if (bound.isFinite() && samples >= 10) {
            looseness.add(kind, bound.nanos(), slowestNanos);
        }
    }

    private static SegmentMeasures run(RandomSegment random, Layout layout, long seed, long cycleNanos) {
        int dead = random.dead;
        List<Fault> faults = dead == WorstCase.NONE ? List.of() : List.of(Fault.deadNode(0, dead));
        List<SegmentMeasures> measures = new ArrayList<>();
        for (int s = 0; s < random.pit.segments().size(); s++) {
            measures.add(new SegmentMeasures(random.pit, layout, s));
        }
        LaneRun run = new LaneRun(random.pit, 0, seed, faults, measures::get);
        RandomFlight flight = new RandomFlight(random.pit, layout, seed, random.gapNanos);
        StateBlock block = new StateBlock();
        long end = Math.min(1500 * MILLI, Math.max(300 * MILLI, 5 * cycleNanos));
        for (long until = 50 * MILLI; until < end; until += 50 * MILLI) {
            flight.fill(block, until);
            run.offer(block);
            run.advanceTo(until);
        }
        run.end();
        return measures.get(0);
    }
}
