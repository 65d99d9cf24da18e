package dropline.scenarios.demo;

/**
 * The lower layer of the standard atmosphere, sea level to 11 km (US Standard Atmosphere 1976; its constants from
 * memory). Heights are geopotential metres, pressures pascal, temperatures kelvin, speeds metres a second.
 */
final class Isa {
    static final double FEET = 0.3048;
    static final double KNOTS = 1852.0 / 3600.0;
    static final double GRAVITY = 9.80665;
    static final double SEA_LEVEL_PASCAL = 101_325.0;
    static final double SEA_LEVEL_KELVIN = 288.15;
    static final double SEA_LEVEL_DENSITY = 1.225;

    private static final double LAPSE = 0.0065;
    private static final double GAS = 287.053;
    private static final double EXPONENT = GRAVITY / (LAPSE * GAS);
    private static final double SEA_LEVEL_SOUND = StrictMath.sqrt(1.4 * GAS * SEA_LEVEL_KELVIN);

    private Isa() {}

    static double kelvin(double metres) {
        return SEA_LEVEL_KELVIN - LAPSE * metres;
    }

    static double pascal(double metres) {
        return SEA_LEVEL_PASCAL * StrictMath.pow(kelvin(metres) / SEA_LEVEL_KELVIN, EXPONENT);
    }

    /** The height at which the standard atmosphere has this pressure. */
    static double metres(double pascal) {
        return SEA_LEVEL_KELVIN / LAPSE * (1 - StrictMath.pow(pascal / SEA_LEVEL_PASCAL, 1 / EXPONENT));
    }

    /** Kilograms a cubic metre of dry air. */
    static double density(double pascal, double kelvin) {
        return pascal / (GAS * kelvin);
    }

    static double mach(double trueAirspeed, double kelvin) {
        return trueAirspeed / StrictMath.sqrt(1.4 * GAS * kelvin);
    }

    /** Calibrated airspeed from the impact pressure of a subsonic flow. */
    static double calibrated(double mach, double pascal) {
        double impact = pascal * (StrictMath.pow(1 + 0.2 * mach * mach, 3.5) - 1);
        return SEA_LEVEL_SOUND * StrictMath.sqrt(5 * (StrictMath.pow(impact / SEA_LEVEL_PASCAL + 1, 2.0 / 7.0) - 1));
    }
}
