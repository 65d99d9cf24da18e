package dropline.scenarios.demo;

/** Where the aircraft is, how it stands and how it moves. */
final class PathColumns {

    private PathColumns() {}

    static void add(Columns columns, Flight flight) {
        Airframe plane = flight.plane;
        columns.add("ias_kt", 2, () -> plane.indicatedAirspeed() / Isa.KNOTS);
        columns.add("tas_kt", 2, () -> plane.airspeed() / Isa.KNOTS);
        columns.add("mach", 4, plane::mach);
        columns.add("ground_speed_kt", 2, () -> plane.groundSpeed() / Isa.KNOTS);
        columns.add("pressure_altitude_ft", 1, () -> plane.pressureAltitude() / Isa.FEET);
        columns.add("baro_altitude_ft", 1, () -> flight.avionics.indicatedAltitude(plane) / Isa.FEET);
        columns.add("radio_altitude_ft", 1, () -> Math.min(2500, plane.heightAboveLake() / Isa.FEET));
        columns.add("vertical_speed_fpm", 0, () -> plane.climbRate() / Isa.FEET * 60);
        columns.add("pitch_deg", 2, () -> StrictMath.toDegrees(plane.climbAngle()) + plane.angleOfAttack());
        columns.add("bank_deg", 2, () -> StrictMath.toDegrees(plane.bank()));
        columns.turn("heading_deg", 2, plane::heading);
        columns.turn("track_deg", 2, plane::track);
        columns.add("turn_rate_dps", 3, plane::turnRate);
        columns.add("slip_ball", 3, () -> slip(flight));
        columns.add("angle_of_attack_deg", 2, plane::angleOfAttack);
        columns.add("load_factor", 3, plane::loadFactor);
        columns.add("outside_air_c", 2, () -> plane.kelvin() - 273.15);
        columns.add("total_air_c", 2, () -> plane.kelvin() * (1 + 0.2 * plane.mach() * plane.mach()) - 273.15);
        columns.add("static_pressure_hpa", 2, () -> plane.pascal() / 100);
        columns.add("air_density_kgm3", 4, plane::density);
    }

    /** Half a degree of ball for each percent of torque apart, trimmed out by the rudder; nothing at rest. */
    private static double slip(Flight flight) {
        double apart = flight.engine1.torque() - flight.engine2.torque() - 0.25 * flight.cockpit.at("rudder-trim");
        return Math.max(-1, Math.min(1, 0.02 * apart * Math.min(1, flight.plane.airspeed() / 30)));
    }
}
