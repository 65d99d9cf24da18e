package dropline.bus.pit;

import java.util.Locale;

/**
 * A copper wire's thickness.
 *
 * @param name as people say it: {@code 18 AWG}, {@code 0.75 mm2}
 * @param squareMillimetres copper's cross-section, mm2
 * @param stranded whether it is of many thin wires
 */
public record Gauge(String name, double squareMillimetres, boolean stranded) {
    /** The thickest there is a number for: 0 AWG; those with several noughts are told by their mm2. */
    public static final int THICKEST_AWG = 0;

    /** The thinnest in common wire tables. */
    public static final int THINNEST_AWG = 40;

    public Gauge {
        if (!(squareMillimetres > 0)) {
            throw new IllegalArgumentException("a wire must have a thickness: squareMillimetres=" + squareMillimetres);
        }
    }

    /** A gauge of the American series: 36 is 0.127 mm thick (ASTM B258), 39 steps on it is 92 times that. */
    public static Gauge awg(int number, boolean stranded) {
        if (number < THICKEST_AWG || number > THINNEST_AWG) {
            throw new IllegalArgumentException("a gauge must be 0..40 AWG: number=" + number);
        }
        double diameter = 0.127 * StrictMath.pow(92, (36 - number) / 39.0);
        return new Gauge(number + " AWG", Math.PI / 4 * diameter * diameter, stranded);
    }

    /** A metric one. */
    public static Gauge metric(double squareMillimetres, boolean stranded) {
        String number = String.format(Locale.ROOT, "%.4f", squareMillimetres).replaceAll("\\.?0+$", "");
        return new Gauge(number + " mm2", squareMillimetres, stranded);
    }
}
