package dropline.bus.supply;

import dropline.bus.pit.Gauge;

/** The resistance of copper wire. */
public final class Conductor {
    /** Annealed copper at 20 degC, 100 % IACS (IEC 60028): ohm mm2 / km. */
    private static final double RESISTIVITY = 17.241;

    /** Per kelvin at 20 degC, the same standard. */
    private static final double PER_KELVIN = 0.00393;

    /** Strands take the long way round: the mean of NEC Chapter 9 Table 8's stranded over solid, 10 to 18 AWG. */
    private static final double STRANDED = 1.0234;

    private Conductor() {}

    /** Of one wire, one way, at its copper's temperature, degC. */
    public static double ohmsPerKilometre(Gauge gauge, double celsius) {
        double solid = RESISTIVITY / gauge.squareMillimetres() * (1 + PER_KELVIN * (celsius - 20));
        return gauge.stranded() ? solid * STRANDED : solid;
    }
}
