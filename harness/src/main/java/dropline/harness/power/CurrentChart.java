package dropline.harness.power;

import dropline.bus.rule.Unit;
import dropline.harness.report.Tick;
import dropline.harness.ruling.Amounts;
import java.util.ArrayList;
import java.util.List;

/**
 * What a supply gives over a flight: the mean as a line, the most of each stretch as the edge of an area.
 *
 * @param mean points of the line
 * @param most points of the area
 * @param times marks along the flight
 * @param amps marks of the current, measured from the top
 */
public record CurrentChart(String supply, String mean, String most, List<Tick> times, List<Tick> amps) {
    /** Inner width. */
    public static final double WIDTH = 330;

    /** Inner height. */
    public static final double HEIGHT = 90;

    private static final int MARKS = 3;

    public CurrentChart {
        times = List.copyOf(times);
        amps = List.copyOf(amps);
    }

    static CurrentChart of(PowerResult.Point supply, Flight flight) {
        Flight.Drawn drawn = flight.points().get(supply.number());
        double top = Math.max(0.001, drawn.max() * 1.1);
        long end = Math.max(1, flight.durationNanos());
        StringBuilder mean = new StringBuilder();
        StringBuilder most = new StringBuilder("0," + HEIGHT);
        double x = 0;
        for (Flight.Stretch stretch : drawn.curve()) {
            x = tenth(WIDTH * stretch.fromNanos() / end);
            mean.append(x).append(',').append(y(stretch.mean(), top)).append(' ');
            most.append(' ').append(x).append(',').append(y(stretch.max(), top));
        }
        most.append(' ').append(x).append(',').append(HEIGHT);
        List<Tick> amps = new ArrayList<>();
        for (int i = 0; i <= MARKS; i++) {
            double value = drawn.max() * i / MARKS;
            amps.add(new Tick(y(value, top), Amounts.of(value, Unit.AMPERES)));
        }
        return new CurrentChart(
                supply.name(), mean.toString().strip(), most.toString(), Tick.along(end, WIDTH, 4), amps);
    }

    private static double y(double amps, double top) {
        return tenth(HEIGHT - HEIGHT * amps / top);
    }

    private static double tenth(double value) {
        return Math.round(value * 10) / 10.0;
    }
}
