package dropline.scenarios.demo;

/** Two 28 V buses, a battery, a generator on each engine and a plug for ground power. Loads add up to the amperes. */
final class Electrics {
    private static final double BATTERY_AMPERE_HOURS = 42;
    private static final double BATTERY_OHMS = 0.012;

    private double charge = 0.86;
    private double volts;
    private double batteryAmperes;
    private double generator1;
    private double generator2;
    private double load;

    void step(double dt, Cockpit cockpit, Engine engine1, Engine engine2) {
        boolean battery = cockpit.on("battery");
        boolean plugged = cockpit.on("external-power");
        boolean online1 = cockpit.on("generator-1") && engine1.gasGenerator() > 55;
        boolean online2 = cockpit.on("generator-2") && engine2.gasGenerator() > 55;
        int sources = (online1 ? 1 : 0) + (online2 ? 1 : 0);
        boolean fed = plugged || sources > 0;
        double starters = starter(cockpit.on("start-1"), engine1) + starter(cockpit.on("start-2"), engine2);
        load = battery || fed ? 9 + switched(cockpit) + starters : 0;
        double rested = 23.2 + 2.6 * charge;
        double held = 28.3 - 0.008 * load - (plugged && sources == 0 ? 0.012 * starters : 0);
        double charging = fed && battery ? Math.max(0, (held - rested) / (0.02 + 1.1 * charge)) * 4 : 0;
        batteryAmperes = Engine.lag(batteryAmperes, fed ? charging : battery ? -load : 0, 0.25, dt);
        double bus = fed ? held : battery ? rested + BATTERY_OHMS * batteryAmperes : 0;
        volts = Engine.lag(volts, bus, 0.12, dt);
        charge = Math.max(0, Math.min(1, charge + batteryAmperes * dt / 3600 / BATTERY_AMPERE_HOURS));
        double each = plugged || sources == 0 ? 0 : (load + Math.max(0, batteryAmperes)) / sources;
        generator1 = Engine.lag(generator1, online1 ? each : 0, 0.3, dt);
        generator2 = Engine.lag(generator2, online2 ? each : 0, 0.3, dt);
    }

    /** A starter draws less the faster it turns. */
    private static double starter(boolean on, Engine engine) {
        return on ? 410 / (1 + engine.gasGenerator() / 18) : 0;
    }

    private static double switched(Cockpit cockpit) {
        double lights = 3.2 * cockpit.at("beacon-light")
                + 2.1 * cockpit.at("position-lights")
                + 4.4 * cockpit.at("strobe-lights")
                + 17 * cockpit.at("landing-lights")
                + 8 * cockpit.at("taxi-light")
                + 1.4 * cockpit.at("cabin-light");
        double heat = 6.5 * cockpit.at("pitot-heat-1")
                + 6.5 * cockpit.at("pitot-heat-2")
                + 24 * cockpit.at("propeller-deice")
                + 15 * cockpit.at("windshield-heat");
        double dimmed = (2.5 * cockpit.at("instrument-dimmer")
                        + 1.6 * cockpit.at("overhead-dimmer")
                        + 1.8 * cockpit.at("console-dimmer"))
                / 1000;
        double pumps =
                5.5 * (cockpit.at("boost-pump-left") + cockpit.at("boost-pump-right")) + 7 * cockpit.at("bilge-pump");
        return lights + heat + dimmed + pumps + 11 * cockpit.at("inverter");
    }

    double volts() {
        return volts;
    }

    /** The second bus hangs on the first through a diode's drop while its own generator rests. */
    double secondBusVolts() {
        return Math.max(0, volts - (generator2 > 1 ? 0 : 0.35));
    }

    /** Into the battery positive. */
    double batteryAmperes() {
        return batteryAmperes;
    }

    double generator1() {
        return generator1;
    }

    double generator2() {
        return generator2;
    }

    double load() {
        return load;
    }

    boolean alive() {
        return volts > 18;
    }

    /** How bright a dimmed zone is, percent: the dimmer's position times what the bus gives. */
    double brightness(int dimmer) {
        return dimmer / 10.0 * Math.min(1, volts / 28);
    }
}
