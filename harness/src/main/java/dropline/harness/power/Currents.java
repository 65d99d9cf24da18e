package dropline.harness.power;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.SupplyTree;
import dropline.bus.supply.Feeds;
import dropline.bus.supply.Flow;
import dropline.bus.supply.Loads;
import dropline.bus.supply.State;
import dropline.harness.replay.WatchedRun;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The currents of a whole pit over a run: brings together what each segment's {@link CurrentWatch} noted, and solves
 * the supplies at every instant at which something changed. Memory does not grow with the length of the run.
 */
final class Currents implements WatchedRun.Between {
    /** Changes closer together than this are looked at together: nothing heats or dips in less. */
    private static final long GRAIN_NANOS = 1_000_000L;

    private final List<CurrentWatch> watches = new ArrayList<>();
    private final CurrentWatch.Changes due = new CurrentWatch.Changes();
    private final Feeds feeds;
    private final Loads loads;
    private final Flow flow;
    private final List<PointTrack> points = new ArrayList<>();
    private final double[] leastVolts;
    private final long[] leastNanos;
    private final double[] groundThen;
    private long[] order = new long[256];
    private long reachedNanos;
    private long solvedNanos;

    Currents(Pit pit) {
        Layout layout = Layout.of(pit);
        feeds = new Feeds(pit, Feeds.WIRE_CELSIUS);
        loads = Loads.of(layout, State.IDLE);
        flow = feeds.solve(loads);
        for (int s = 0; s < pit.segments().size(); s++) {
            watches.add(new CurrentWatch(pit, layout, s));
        }
        for (int p = 0; p < pit.supplies().points(); p++) {
            points.add(new PointTrack());
        }
        int nodes = layout.nodes().size();
        leastVolts = new double[nodes];
        leastNanos = new long[nodes];
        groundThen = new double[nodes];
        Arrays.fill(leastVolts, Double.POSITIVE_INFINITY);
        look(0);
    }

    /** One for each segment, in the order of the pit. */
    List<CurrentWatch> watches() {
        return watches;
    }

    @Override
    public void stretchEnded(long untilNanos) {
        due.clear();
        for (CurrentWatch watch : watches) {
            watch.reached(untilNanos);
            watch.changes().hand(untilNanos, due);
        }
        int count = due.count();
        if (order.length < count) {
            order = new long[2 * count];
        }
        for (int i = 0; i < count; i++) {
            order[i] = Math.max(0, due.nanos(i) - reachedNanos) / GRAIN_NANOS << Integer.SIZE | i;
        }
        Arrays.sort(order, 0, count);
        int next = 0;
        while (next < count) {
            long grain = order[next] >> Integer.SIZE;
            while (next < count && order[next] >> Integer.SIZE == grain) {
                int i = (int) order[next++];
                loads.change(due.node(i), due.throughBoard(i), due.microamps(i));
            }
            look(reachedNanos + grain * GRAIN_NANOS);
        }
        reachedNanos = untilNanos;
    }

    /** What has flowed since the last look, and what flows from now on. */
    private void look(long atNanos) {
        for (int p = 0; p < points.size(); p++) {
            points.get(p).flowed(solvedNanos, atNanos, flow.amps(p));
        }
        solvedNanos = atNanos;
        feeds.solve(loads, flow);
        for (int p = 0; p < points.size(); p++) {
            points.get(p).reaches(atNanos, flow.amps(p));
        }
        for (int n = 0; n < leastVolts.length; n++) {
            if (feeds.point(n) != SupplyTree.NOWHERE && flow.nodeVolts(n) < leastVolts[n]) {
                leastVolts[n] = flow.nodeVolts(n);
                leastNanos[n] = atNanos;
                groundThen[n] = flow.groundVolts(feeds.point(n));
            }
        }
    }

    /** The whole of it, once the run has ended there. */
    Flight ended(String recording, long endNanos, List<String> losses) {
        for (int p = 0; p < points.size(); p++) {
            points.get(p).flowed(solvedNanos, Math.max(solvedNanos, endNanos), flow.amps(p));
        }
        List<Flight.Least> boards = new ArrayList<>();
        for (int n = 0; n < leastVolts.length; n++) {
            boolean fed = feeds.point(n) != SupplyTree.NOWHERE;
            boards.add(new Flight.Least(fed ? leastVolts[n] : Double.NaN, leastNanos[n], groundThen[n]));
        }
        return new Flight(
                recording, endNanos, points.stream().map(PointTrack::drawn).toList(), boards, losses);
    }
}
