package dropline.harness.sized;

import dropline.harness.report.Figures;
import dropline.harness.report.Tick;
import dropline.harness.size.BaudCurve;
import dropline.harness.size.BaudCurve.Point;
import dropline.harness.size.SizeResult;
import java.util.ArrayList;
import java.util.List;

/**
 * Panels against latency: for each baud rate, how much of its limit the tightest panel uses with so many more.
 *
 * @param lines one for each rate, ascending
 * @param panels marks along the number of further panels
 * @param shares marks of the share of the limit, from the top
 * @param limitY where the limit lies
 * @param allowedY where the limit less the margin lies
 */
public record LatencyChart(List<Line> lines, List<Tick> panels, List<Tick> shares, double limitY, double allowedY) {
    /** Inner width. */
    public static final double WIDTH = 660;

    /** Inner height. */
    public static final double HEIGHT = 300;

    private static final double MOST_SHARE = 1.5;
    private static final int STYLES = 6;
    private static final double LABEL_APART = 13;
    private static final double LABEL_LENGTH = 60;

    public LatencyChart {
        lines = List.copyOf(lines);
        panels = List.copyOf(panels);
        shares = List.copyOf(shares);
    }

    /**
     * One rate.
     *
     * @param name the rate, for people
     * @param style number of its colour and dashes
     * @param points of the line
     * @param endX where it ends
     * @param endY where its name stands
     * @param kneeX where it bends; negative where it does not
     * @param kneeY see kneeX
     * @param own whether it is the segment's own rate
     */
    public record Line(
            String name, int style, String points, double endX, double endY, double kneeX, double kneeY, boolean own) {}

    static LatencyChart of(SizeResult result) {
        int most = 1;
        for (BaudCurve curve : result.curves()) {
            for (Point point : curve.points()) {
                most = Math.max(most, point.share() <= MOST_SHARE ? point.more() : 0);
            }
        }
        List<Line> lines = new ArrayList<>();
        List<Spot> taken =
                new ArrayList<>(List.of(new Spot(WIDTH - 60, y(1)), new Spot(WIDTH - 60, y(1 - result.margin()))));
        for (BaudCurve curve : result.curves()) {
            lines.add(line(curve, lines.size() % STYLES, most, curve.baud() == result.baud(), taken));
        }
        List<Tick> panels = new ArrayList<>();
        int step = (int) Math.max(1, Tick.roundStep(Math.max(1, most / 6)));
        for (int more = 0; more <= most; more += step) {
            panels.add(new Tick(x(more, most), Integer.toString(more)));
        }
        List<Tick> shares = new ArrayList<>();
        for (int percent = 0; percent <= 150; percent += 25) {
            shares.add(new Tick(y(percent / 100.0), percent + "%"));
        }
        return new LatencyChart(lines, panels, shares, y(1), y(1 - result.margin()));
    }

    private static Line line(BaudCurve curve, int style, int most, boolean own, List<Spot> taken) {
        StringBuilder points = new StringBuilder();
        double endX = 0;
        double endY = HEIGHT;
        double kneeX = -1;
        double kneeY = 0;
        for (Point point : curve.points()) {
            if (point.more() > most) {
                break;
            }
            endX = x(point.more(), most);
            endY = y(point.share());
            points.append(endX).append(',').append(endY).append(' ');
            if (point.more() == curve.knee()) {
                kneeX = endX;
                kneeY = endY;
            }
            if (point.share() > MOST_SHARE) {
                break;
            }
        }
        double label = Math.max(8, endY);
        while (isTaken(endX, label, taken)) {
            label += LABEL_APART;
        }
        taken.add(new Spot(endX, label));
        String name = Figures.count(curve.baud());
        return new Line(name, style, points.toString().strip(), endX, tenth(label), kneeX, kneeY, own);
    }

    /** Where a name begins. */
    private record Spot(double x, double y) {}

    private static boolean isTaken(double x, double y, List<Spot> taken) {
        return taken.stream()
                .anyMatch(other -> Math.abs(other.x - x) < LABEL_LENGTH && Math.abs(other.y - y) < LABEL_APART);
    }

    private static double x(int more, int most) {
        return tenth(WIDTH * more / most);
    }

    private static double y(double share) {
        return tenth(HEIGHT - HEIGHT * Math.min(share, MOST_SHARE) / MOST_SHARE);
    }

    private static double tenth(double value) {
        return Math.round(value * 10) / 10.0;
    }
}
