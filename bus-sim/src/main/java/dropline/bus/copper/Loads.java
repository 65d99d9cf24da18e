package dropline.bus.copper;

import java.util.List;

/** What transceivers load a pair with. One unit load is some 12 kohm (TI SLLA272D, bus loading). */
final class Loads {
    /** What a driver that keeps to the standard can drive (the same). */
    static final int MOST_UNIT_LOADS = 32;

    static final double OHMS_OF_A_UNIT_LOAD = 12_000;

    /** Parts such as 1/5 do not add up to whole numbers exactly. */
    static final double ROUNDING = 1e-9;

    private static final double BILLION = 1e9;

    private Loads() {}

    /** The sum, to a billionth. */
    static double sum(List<Double> unitLoads) {
        double sum = unitLoads.stream().mapToDouble(Double::doubleValue).sum();
        return Math.rint(sum * BILLION) / BILLION;
    }

    /** What a load is as a resistor, ohm. */
    static double ohms(double unitLoad) {
        return OHMS_OF_A_UNIT_LOAD / unitLoad;
    }
}
