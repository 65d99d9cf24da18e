package dropline.scenarios.demo;

/** Fuel, electrics, hydraulics, trim, lights and their dimmed zones. */
final class SystemColumns {
    private static final String[] LIGHTS = {"beacon", "position", "strobe", "landing", "taxi", "cabin"};

    private SystemColumns() {}

    static void add(Columns columns, Flight flight) {
        Fuel fuel = flight.fuel;
        Cockpit cockpit = flight.cockpit;
        columns.add("fuel_left_kg", 2, fuel::left);
        columns.add("fuel_right_kg", 2, fuel::right);
        columns.add("fuel_total_kg", 2, fuel::total);
        columns.add("fuel_used_kg", 2, fuel::used);
        electrics(columns, flight.electrics);
        hydraulics(columns, flight.hydraulics);
        columns.add("elevator_trim_deg", 1, () -> cockpit.at("elevator-trim") * 0.2);
        columns.add("rudder_trim_deg", 1, () -> cockpit.at("rudder-trim") * 0.25);
        columns.add("flap_selected_deg", 0, () -> new int[] {0, 15, 32}[cockpit.at("flap-lever")]);
        columns.add("suction_inhg", 2, () -> suction(flight));
        columns.add("brake_psi", 0, () -> cockpit.on("parking-brake") ? 640 : 0);
        for (String light : LIGHTS) {
            columns.lamp("light_" + light, () -> cockpit.on(light(light)) && flight.electrics.alive());
        }
        columns.add("lighting_instruments_pct", 0, () -> flight.electrics.brightness(cockpit.at("instrument-dimmer")));
        columns.add("lighting_overhead_pct", 0, () -> flight.electrics.brightness(cockpit.at("overhead-dimmer")));
        columns.add("lighting_console_pct", 0, () -> flight.electrics.brightness(cockpit.at("console-dimmer")));
    }

    private static String light(String light) {
        boolean several = light.equals("position") || light.equals("strobe") || light.equals("landing");
        return light + (several ? "-lights" : "-light");
    }

    private static void electrics(Columns columns, Electrics electrics) {
        columns.add("bus1_v", 2, electrics::volts);
        columns.add("bus2_v", 2, electrics::secondBusVolts);
        columns.add("battery_a", 1, electrics::batteryAmperes);
        columns.add("generator1_a", 1, electrics::generator1);
        columns.add("generator2_a", 1, electrics::generator2);
        columns.add("load_a", 1, electrics::load);
    }

    private static void hydraulics(Columns columns, Hydraulics hydraulics) {
        columns.add("hydraulic_psi", 0, hydraulics::psi);
        columns.add("hydraulic_l", 2, hydraulics::litres);
        columns.add("gear_nose_pct", 1, () -> 100 * hydraulics.leg(0));
        columns.add("gear_left_pct", 1, () -> 100 * hydraulics.leg(1));
        columns.add("gear_right_pct", 1, () -> 100 * hydraulics.leg(2));
        columns.add("flaps_deg", 2, hydraulics::flaps);
        columns.add("water_rudder_pct", 1, () -> 100 * hydraulics.rudders());
    }

    /** Bleed air makes it, so it follows the faster engine. */
    private static double suction(Flight flight) {
        double fastest = Math.max(flight.engine1.gasGenerator(), flight.engine2.gasGenerator());
        return 5.1 * Math.min(1, fastest / 60);
    }
}
