package dropline.scenarios.demo;

/**
 * One turboprop. The gas generator follows its lever with a first-order lag, everything else follows the gas generator.
 * The figures are invented, of the size such engines have.
 */
final class Engine {
    static final double FULL_POWER_WATTS = 560_000;
    private static final double IDLE = 62;

    private final double quirk;
    private double gasGenerator;
    private double torque;
    private double propRpm;
    private double turbineCelsius;
    private double fuelFlow;
    private double oilCelsius;
    private double oilPsi;
    private double fuelPsi;
    private double ripple;
    private boolean lit;

    /** @param quirk what makes this engine differ a little from its twin, percent */
    Engine(double quirk, double outsideCelsius) {
        this.quirk = quirk;
        this.turbineCelsius = outsideCelsius;
        this.oilCelsius = outsideCelsius;
    }

    /**
     * @param power power lever, 0..1
     * @param prop propeller lever, 0..1
     * @param fuelOn condition lever past its gate
     * @param densityRatio air density over that at sea level
     */
    void step(
            double dt,
            boolean starter,
            boolean fuelOn,
            boolean boosted,
            double power,
            double prop,
            double outsideCelsius,
            double densityRatio,
            double airspeed) {
        lit = fuelOn && boosted && (lit || starter && gasGenerator > 13);
        ripple += dt;
        double hunting =
                0.16 * StrictMath.sin((2.3 + 0.2 * quirk) * ripple) + 0.09 * StrictMath.sin(5.1 * ripple + quirk);
        double running = IDLE + hunting + (39 + quirk / 4) * StrictMath.pow(power, 0.8);
        double target = lit ? running : starter ? 21 : 0;
        double lagSeconds = lit && gasGenerator > 0.9 * IDLE ? 1.4 : 6.0;
        gasGenerator = lag(gasGenerator, target, lagSeconds, dt);
        double spin = Math.max(0, (gasGenerator - 50) / 51);
        double full = Math.min(1, 1.12 * densityRatio) * (100 + quirk);
        torque = lag(torque, lit ? full * spin * spin * spin : 0, 0.3, dt);
        double governed = 1600 + 400 * prop;
        double free = gasGenerator < 30 ? 0 : 780 + 22 * torque + 11 * airspeed;
        propRpm = lag(propRpm, Math.min(governed, free), 1.2, dt);
        fuelFlow = lag(fuelFlow, lit ? 48 + 1.5 * torque + quirk : 0, 0.5, dt);
        fuelPsi = lag(fuelPsi, (boosted ? 22 : 0) + 0.12 * gasGenerator, 0.8, dt);
        heat(dt, outsideCelsius);
    }

    private void heat(double dt, double outsideCelsius) {
        double warm = 510 + 5.2 * (gasGenerator - IDLE) + 1.5 * (outsideCelsius - 15) + 3 * quirk;
        double flame = gasGenerator < 0.85 * IDLE ? 800 : warm;
        turbineCelsius = lag(turbineCelsius, lit ? flame : outsideCelsius, lit ? 2.5 : 40, dt);
        oilCelsius = lag(oilCelsius, outsideCelsius + (lit ? 48 + 0.28 * torque : 0), 70, dt);
        double cold = Math.max(0, 60 - oilCelsius) * 0.25;
        oilPsi = lag(oilPsi, Math.min(1, gasGenerator / IDLE) * (92 + cold + 0.08 * torque), 0.7, dt);
    }

    /** Approaches a target with a first-order lag. */
    static double lag(double value, double target, double lagSeconds, double dt) {
        return target + (value - target) * StrictMath.exp(-dt / lagSeconds);
    }

    boolean lit() {
        return lit;
    }

    /** Percent. */
    double gasGenerator() {
        return gasGenerator;
    }

    /** Percent of full. */
    double torque() {
        return torque;
    }

    double propRpm() {
        return propRpm;
    }

    double turbineCelsius() {
        return turbineCelsius;
    }

    /** Kilograms an hour. */
    double fuelFlow() {
        return fuelFlow;
    }

    double oilCelsius() {
        return oilCelsius;
    }

    double oilPsi() {
        return oilPsi;
    }

    double fuelPsi() {
        return fuelPsi;
    }

    double shaftWatts() {
        return FULL_POWER_WATTS * torque / 100 * Math.min(1, propRpm / 1900);
    }
}
