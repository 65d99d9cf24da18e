package dropline.harness.size;

import dropline.bus.clock.BaudStanding;
import dropline.bus.pit.Adapter;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.plan.AtBaud;
import dropline.harness.size.BaudCurve.Misfit;
import dropline.harness.size.BaudCurve.Point;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * Latency over panels at each baud rate. At rates other than the segment's own only the busiest stretch is played, in
 * one seed, healthy and with the node dead that matters most at its own.
 */
final class Curves {
    /** Beside the numbers that the search came by, these parts of what a rate takes are tried for the curve. */
    private static final double[] PARTS = {0, 0.3, 0.6, 0.85, 1.25};

    private final SizePlan plan;
    private final Search own;
    private final List<Case> kinds;
    private final int inFirstSeed;
    private final Judging judging;

    /**
     * @param own searched at the segment's own rate
     * @param kinds the kinds of run that matter there
     * @param inFirstSeed what was found there in the first seed
     */
    Curves(SizePlan plan, Search own, List<Case> kinds, int inFirstSeed, Judging judging) {
        this.plan = plan;
        this.own = own;
        this.kinds = kinds;
        this.inFirstSeed = inFirstSeed;
        this.judging = judging;
    }

    List<BaudCurve> all() throws IOException {
        return judging.each(plan.bauds(), this::curve);
    }

    private BaudCurve curve(int baud) throws IOException {
        Pit pit = AtBaud.of(plan.pit(), plan.segment(), baud);
        boolean isOwn = baud == plan.pit().segments().get(plan.segment()).baud();
        Search search = isOwn ? own : own.of(own.growth().of(pit));
        int more = isOwn ? inFirstSeed : search.largestOf(kinds, expected(baud));
        List<Point> points = points(search, more);
        return new BaudCurve(
                baud,
                more,
                Knee.of(points),
                withoutAdapter(search, pit, more),
                search.beyond(more),
                points,
                misfits(pit.segments().get(plan.segment())));
    }

    /** Where to begin: twice the rate, twice the panels. */
    private int expected(int baud) {
        Segment now = plan.pit().segments().get(plan.segment());
        int all = Math.max(0, inFirstSeed) + now.nodes().size();
        return (int) Math.max(
                0,
                Math.min(
                        own.most(), (long) all * baud / now.baud() - now.nodes().size()));
    }

    private List<Point> points(Search search, int more) throws IOException {
        List<Case> tried = new ArrayList<>();
        for (double part : PARTS) {
            long count = Math.max(Math.round(part * Math.max(more, 4)), part > 1 ? more + 1 : 0);
            tried.add(new Case((int) Math.min(search.most(), count), plan.seed(), Candidate.HEALTHY));
        }
        search.fares(tried);
        List<Point> points = new ArrayList<>();
        search.made(plan.seed(), Candidate.HEALTHY)
                .forEach((count, fare) -> fare.tightest()
                        .ifPresent(fared -> points.add(new Point(
                                count,
                                fared.name(),
                                fared.p99Nanos(),
                                fared.worstNanos(),
                                fared.limitNanos(),
                                fared.lost() > 0))));
        return points;
    }

    private int withoutAdapter(Search search, Pit pit, int more) throws IOException {
        Pit without = pit;
        for (int segment : pit.runsWith(plan.segment())) {
            Segment before = without.segments().get(segment);
            without = without.with(segment, before.with(before.controller().with(Adapter.NONE)));
        }
        return without.equals(pit)
                ? more
                : search.of(search.growth().of(without)).largestOf(kinds, more);
    }

    private static List<Misfit> misfits(Segment segment) {
        List<Misfit> misfits = new ArrayList<>();
        for (Node node : segment.nodes()) {
            double error = AtBaud.error(segment, node);
            BaudStanding standing = BaudStanding.of(error);
            if (standing != BaudStanding.GOOD) {
                misfits.add(new Misfit(node.name(), error, standing));
            }
        }
        return misfits;
    }
}
