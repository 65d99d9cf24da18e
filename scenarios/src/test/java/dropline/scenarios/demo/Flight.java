package dropline.scenarios.demo;

/**
 * The demo flight of the Skerrow Dunlin, an invented twin-engine amphibian: from the cold cockpit on a slipway over an
 * evening circuit to the mooring. Integrated in fixed steps of {@value #STEP_NANOS} ns; the same on every machine.
 */
final class Flight {
    static final long STEP_NANOS = 40_000_000;
    static final long LENGTH_NANOS = 760_000_000_000L;

    private static final double DT = STEP_NANOS / 1e9;

    final Cockpit cockpit = new Cockpit();
    final Story story = new Story();
    final Pilot pilot = new Pilot();
    final Airframe plane = new Airframe();
    final Avionics avionics = new Avionics();
    final Engine engine1 = new Engine(0.6, plane.kelvin() - 273.15);
    final Engine engine2 = new Engine(-0.9, plane.kelvin() - 273.15);
    final Fuel fuel = new Fuel();
    final Electrics electrics = new Electrics();
    final Hydraulics hydraulics = new Hydraulics();
    private long nanos;

    /** Brings the flight to its first row, at time zero. */
    void begin() {
        story.advanceTo(0, cockpit);
        avionics.step(0, cockpit, plane);
    }

    /** Advances by one step; false at the end of the flight. */
    boolean step() {
        if (nanos >= LENGTH_NANOS) {
            return false;
        }
        nanos += STEP_NANOS;
        story.advanceTo(nanos, cockpit);
        avionics.step(seconds(), cockpit, plane);
        Airframe.Wish wish = pilot.step(nanos, DT, plane, avionics, cockpit);
        turn(engine1, "1", "left");
        turn(engine2, "2", "right");
        double watts = engine1.shaftWatts() + engine2.shaftWatts();
        plane.step(DT, seconds(), watts, fuel.total(), hydraulics.flaps(), wish);
        fuel.step(DT, engine1.fuelFlow(), engine2.fuelFlow(), cockpit.on("crossfeed"));
        electrics.step(DT, cockpit, engine1, engine2);
        hydraulics.step(DT, cockpit, engine1, engine2);
        return true;
    }

    private void turn(Engine engine, String number, String side) {
        boolean powered = electrics.alive() || cockpit.on("external-power");
        engine.step(
                DT,
                powered && cockpit.on("start-" + number),
                cockpit.at("condition-lever-" + number) > 500,
                powered && cockpit.on("boost-pump-" + side),
                cockpit.at("power-lever-" + number) / 1000.0,
                cockpit.at("prop-lever-" + number) / 1000.0,
                plane.kelvin() - 273.15,
                plane.density() / Isa.SEA_LEVEL_DENSITY,
                plane.airspeed());
    }

    long nanos() {
        return nanos;
    }

    double seconds() {
        return nanos / 1e9;
    }
}
