package dropline.scenarios.demo;

/** What moves by oil: three legs, flaps and water rudders, each at its own speed, and the pressure that moves them. */
final class Hydraulics {
    private static final double[] LEG_SECONDS = {5.2, 6.0, 6.3};
    private static final double FLAP_DEGREES_A_SECOND = 2.5;
    private static final int[] FLAP_DETENTS = {0, 15, 32};

    private final double[] legs = {1, 1, 1};
    private double flaps;
    private double rudders;
    private double pressure;

    void step(double dt, Cockpit cockpit, Engine engine1, Engine engine2) {
        boolean pumped = pressure > 600;
        boolean moving = false;
        for (int leg = 0; leg < legs.length; leg++) {
            double before = legs[leg];
            legs[leg] = towards(before, cockpit.at("gear-lever"), pumped ? dt / LEG_SECONDS[leg] : 0);
            moving |= legs[leg] != before;
        }
        double flapsBefore = flaps;
        flaps = towards(flaps, FLAP_DETENTS[cockpit.at("flap-lever")], pumped ? dt * FLAP_DEGREES_A_SECOND : 0);
        rudders = towards(rudders, cockpit.at("water-rudders"), pumped ? dt / 1.8 : 0);
        double pump = 2000 * Math.min(1, Math.max(engine1.gasGenerator(), engine2.gasGenerator()) / 58);
        double drawn = (moving ? 420 : 0) + (flaps != flapsBefore ? 180 : 0);
        pressure = Engine.lag(pressure, Math.max(0, pump - drawn), 0.9, dt);
    }

    private static double towards(double value, double target, double step) {
        return value < target ? Math.min(target, value + step) : Math.max(target, value - step);
    }

    /** 0 up, 1 down and locked. */
    double leg(int leg) {
        return legs[leg];
    }

    boolean gearMoving() {
        for (double leg : legs) {
            if (leg > 0 && leg < 1) {
                return true;
            }
        }
        return false;
    }

    /** Degrees. */
    double flaps() {
        return flaps;
    }

    /** 0 up, 1 down in the water. */
    double rudders() {
        return rudders;
    }

    double psi() {
        return pressure;
    }

    /** Litres in the reservoir: oil that fills the jacks is missing there. */
    double litres() {
        return 6.1 - 0.35 * (legs[0] + legs[1] + legs[2]) - 0.012 * flaps - 0.1 * rudders;
    }
}
