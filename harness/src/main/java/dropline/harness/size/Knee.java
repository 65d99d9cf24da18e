package dropline.harness.size;

import java.util.List;

/**
 * Where a curve of latency over panels bends: the point farthest below the straight line from its first point to the
 * first at or beyond the budget, or the last. Both axes count as shares of that line's extent; a bend of less than a
 * tenth is none.
 */
final class Knee {
    /** In place of a number of panels, where the curve does not bend. */
    static final int NONE = -1;

    private static final double LEAST_BEND = 0.1;

    private Knee() {}

    static int of(List<BaudCurve.Point> points) {
        int last = 0;
        while (last < points.size() - 1 && points.get(last).share() < 1) {
            last++;
        }
        if (last < 2) {
            return NONE;
        }
        BaudCurve.Point from = points.get(0);
        BaudCurve.Point to = points.get(last);
        double rise = to.share() - from.share();
        if (!(rise > 0)) {
            return NONE;
        }
        int knee = NONE;
        double most = LEAST_BEND;
        for (BaudCurve.Point point : points.subList(1, last)) {
            double along = (double) (point.more() - from.more()) / (to.more() - from.more());
            double below = along - (point.share() - from.share()) / rise;
            if (below > most) {
                most = below;
                knee = point.more();
            }
        }
        return knee;
    }
}
