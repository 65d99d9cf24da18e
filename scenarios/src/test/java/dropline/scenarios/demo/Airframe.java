package dropline.scenarios.demo;

/**
 * The aircraft as a point with mass: thrust and drag change its speed, climb angle and bank bend its path. In the air
 * it turns at the coordinated rate, g tan(bank) / true airspeed. Figures invented, of the size a six-tonne amphibian
 * has.
 */
final class Airframe {
    /** Surface of the lake above the sea, metres. */
    static final double LAKE = 600 * Isa.FEET;

    private static final double RAMP = 612 * Isa.FEET;
    private static final double EMPTY_KG = 4_700;
    private static final double WING = 34;
    private static final double WARMER_KELVIN = 3;
    private static final double QNH_PASCAL = 100_900;
    private static final double WIND_FROM = 250;
    private static final double WIND = 5.5;

    private double x;
    private double y;
    private double altitude = RAMP;
    private double airspeed;
    private double climbAngle;
    private double climbRate;
    private double bank;
    private double heading = 95;
    private double turnRate;
    private double loadFactor = 1;
    private double liftCoefficient;
    private double slipway;
    private boolean airborne;

    /** Where the pilot wants to go. Angles in radians, except {@code heading} in degrees. */
    record Wish(double climbAngle, double bank, double heading, boolean lift, boolean brakes, boolean afloat) {}

    void step(double dt, double seconds, double thrustWatts, double fuelKg, double flapsDegrees, Wish wish) {
        double mass = EMPTY_KG + fuelKg;
        double weight = mass * Isa.GRAVITY;
        double thrust = 0.8 * thrustWatts / Math.max(airspeed, 24);
        double flow = 0.5 * density() * airspeed * airspeed;
        airborne = wish.lift || airborne && altitude > LAKE;
        if (airborne) {
            fly(dt, seconds, wish);
        } else {
            stay(dt, seconds, wish);
        }
        liftCoefficient = airborne ? loadFactor * weight / (Math.max(flow, 200) * WING) : 0.5 + 0.02 * flapsDegrees;
        double drag = flow * WING * (0.033 + 0.0011 * flapsDegrees + 0.052 * liftCoefficient * liftCoefficient);
        double resistance = drag + (airborne ? 0 : surface(weight, wish));
        double push = (thrust - resistance) / mass - Isa.GRAVITY * StrictMath.sin(climbAngle);
        airspeed = Math.max(0, airspeed + push * dt);
        heading = wrap(heading + turnRate * dt);
        double track = StrictMath.toRadians(heading);
        double from = StrictMath.toRadians(WIND_FROM);
        double drift = airborne ? WIND : 0;
        x += (airspeed * StrictMath.cos(climbAngle) * StrictMath.sin(track) - drift * StrictMath.sin(from)) * dt;
        y += (airspeed * StrictMath.cos(climbAngle) * StrictMath.cos(track) - drift * StrictMath.cos(from)) * dt;
    }

    private void fly(double dt, double seconds, Wish wish) {
        double bumps = 0.0022 * StrictMath.sin(0.9 * seconds) + 0.0014 * StrictMath.sin(2.3 * seconds + 1);
        double before = climbAngle;
        climbAngle = Engine.lag(climbAngle, wish.climbAngle + bumps, 1.3, dt);
        double sway = 0.008 * StrictMath.sin(1.1 * seconds + 2) + 0.005 * StrictMath.sin(2.9 * seconds);
        double roll = Math.max(-0.2, Math.min(0.2, (wish.bank + sway - bank) / 0.8));
        bank += roll * dt;
        turnRate = StrictMath.toDegrees(Isa.GRAVITY * StrictMath.tan(bank) / airspeed);
        climbRate = airspeed * StrictMath.sin(climbAngle);
        double floor = Math.max(LAKE, altitude + climbRate * dt);
        climbRate = (floor - altitude) / dt;
        altitude = floor;
        loadFactor =
                StrictMath.cos(climbAngle) / StrictMath.cos(bank) + airspeed * (climbAngle - before) / dt / Isa.GRAVITY;
    }

    private void stay(double dt, double seconds, Wish wish) {
        slipway = Math.min(1, slipway + (wish.afloat ? dt / 14 : 0));
        double height = RAMP + (LAKE - RAMP) * slipway;
        climbRate = (height - altitude) / dt;
        altitude = height;
        climbAngle = 0;
        double waves = slipway < 1 ? 0 : 0.010 * StrictMath.sin(1.7 * seconds) + 0.006 * StrictMath.sin(2.6 * seconds);
        bank = Engine.lag(bank, waves, 0.4, dt);
        double error = shortWay(wish.heading - heading);
        double most = airspeed < 0.3 ? 0 : 9;
        turnRate = Engine.lag(turnRate, Math.max(-most, Math.min(most, 0.45 * error)), 0.5, dt);
        loadFactor = 1;
    }

    /** Rolling resistance ashore; on the water the hump a hull must climb before it planes. */
    private double surface(double weight, Wish wish) {
        if (slipway < 1) {
            return airspeed == 0 && !wish.brakes ? 0 : weight * (wish.brakes ? 0.25 : 0.02);
        }
        double hump = (airspeed / 13 - 1) / 0.45;
        return weight * (0.10 * StrictMath.exp(-hump * hump) + 0.05 * Math.min(1, airspeed / 13)) + 60 * airspeed;
    }

    /** Degrees 0 (included) to 360 (excluded). */
    static double wrap(double degrees) {
        double round = degrees % 360;
        return round < 0 ? round + 360 : round;
    }

    /** A difference of headings, the short way: -180..180 degrees. */
    static double shortWay(double degrees) {
        double round = wrap(degrees);
        return round > 180 ? round - 360 : round;
    }

    double pascal() {
        return Isa.pascal(pressureAltitude());
    }

    /** Metres in the standard atmosphere at the pressure outside. */
    double pressureAltitude() {
        return altitude + Isa.metres(QNH_PASCAL);
    }

    double kelvin() {
        return Isa.kelvin(pressureAltitude()) + WARMER_KELVIN;
    }

    double density() {
        return Isa.density(pascal(), kelvin());
    }

    double mach() {
        return Isa.mach(airspeed, kelvin());
    }

    double indicatedAirspeed() {
        return Isa.calibrated(mach(), pascal());
    }

    /** True airspeed, m/s. */
    double airspeed() {
        return airspeed;
    }

    double altitude() {
        return altitude;
    }

    double heightAboveLake() {
        return altitude - LAKE;
    }

    /** Metres a second, exactly the change of altitude over the step. */
    double climbRate() {
        return climbRate;
    }

    double climbAngle() {
        return climbAngle;
    }

    /** Radians, right wing down positive. */
    double bank() {
        return bank;
    }

    double heading() {
        return heading;
    }

    /** Degrees a second, to the right positive. */
    double turnRate() {
        return turnRate;
    }

    double loadFactor() {
        return loadFactor;
    }

    /** Degrees between wing and flow. */
    double angleOfAttack() {
        return airspeed < 15 ? 0 : liftCoefficient / 0.095 - 3;
    }

    boolean airborne() {
        return airborne;
    }

    boolean afloat() {
        return slipway >= 1 && !airborne;
    }

    /** Metres east of where the flight began. */
    double x() {
        return x;
    }

    /** Metres north of where the flight began. */
    double y() {
        return y;
    }

    double groundSpeed() {
        double along = StrictMath.toRadians(WIND_FROM - heading);
        double head = airborne ? WIND * StrictMath.cos(along) : 0;
        double cross = airborne ? WIND * StrictMath.sin(along) : 0;
        return StrictMath.hypot(airspeed * StrictMath.cos(climbAngle) - head, cross);
    }

    /** The direction of travel over the ground, degrees. */
    double track() {
        double along = StrictMath.toRadians(WIND_FROM - heading);
        double head = airborne ? WIND * StrictMath.cos(along) : 0;
        double cross = airborne ? WIND * StrictMath.sin(along) : 0;
        double drift = StrictMath.atan2(-cross, Math.max(1, airspeed * StrictMath.cos(climbAngle) - head));
        return wrap(heading + StrictMath.toDegrees(drift));
    }
}
