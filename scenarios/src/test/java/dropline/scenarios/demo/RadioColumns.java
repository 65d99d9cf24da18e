package dropline.scenarios.demo;

/** Radios, selectors, navigation and clocks. */
final class RadioColumns {

    private RadioColumns() {}

    static void add(Columns columns, Flight flight) {
        Avionics avionics = flight.avionics;
        Airframe plane = flight.plane;
        for (String radio : new String[] {"com-1", "com-2", "nav-1"}) {
            String name = radio.replace("-", "");
            columns.add(name + "_active_khz", 0, () -> avionics.frequency(radio + "-active"));
            columns.add(name + "_standby_khz", 0, () -> avionics.frequency(radio + "-standby"));
        }
        columns.add("adf_khz", 0, avionics::adf);
        columns.add("transponder_code", 0, avionics::transponderCode);
        columns.add("audio_channel", 0, () -> flight.cockpit.at("audio-selector"));
        columns.add("baro_setting_hpa", 0, avionics::baroHectopascal);
        columns.add("minimum_ft", 0, avionics::minimumFeet);
        columns.add("heading_bug_deg", 0, avionics::headingBug);
        columns.add("course_deg", 0, avionics::selectedCourse);
        columns.add("altitude_selected_ft", 0, avionics::selectedAltitudeFeet);
        columns.add("climb_selected_fpm", 0, avionics::selectedClimb);
        columns.turn("beacon_bearing_deg", 2, () -> avionics.beaconBearing(plane));
        columns.turn("adf_bearing_deg", 2, () -> Airframe.wrap(avionics.beaconBearing(plane) - plane.heading()));
        columns.add("beacon_distance_nm", 2, () -> avionics.beaconRange(plane) / 1852);
        columns.add("course_dots", 3, () -> avionics.courseDots(plane));
        columns.add("path_dots", 3, () -> avionics.pathDots(plane));
        columns.lamp("to_flag", () -> avionics.towardsBeacon(plane));
        columns.lamp("nav_flag", () -> !flight.electrics.alive());
        columns.add("clock_hour", 0, () -> avionics.clock(flight.seconds()) / 3600 % 24);
        columns.add("clock_minute", 0, () -> avionics.clock(flight.seconds()) / 60 % 60);
        columns.add("clock_second", 0, () -> avionics.clock(flight.seconds()) % 60);
        columns.add("timer_minute", 0, () -> Math.floorDiv(avionics.timer(flight.seconds()), 60));
        columns.add("timer_second", 0, () -> avionics.timer(flight.seconds()) % 60);
    }
}
