package dropline.scenarios.demo;

/** One engine, its levers and its lamps. */
final class EngineColumns {

    private EngineColumns() {}

    static void add(Columns columns, Flight flight, Engine engine, int number, String side) {
        String prefix = "engine" + number + "_";
        Cockpit cockpit = flight.cockpit;
        columns.add(prefix + "torque_pct", 2, engine::torque);
        columns.add(prefix + "gas_generator_pct", 2, engine::gasGenerator);
        columns.add(prefix + "prop_rpm", 1, engine::propRpm);
        columns.add(prefix + "turbine_c", 1, engine::turbineCelsius);
        columns.add(prefix + "fuel_flow_kgh", 1, engine::fuelFlow);
        columns.add(prefix + "oil_psi", 2, engine::oilPsi);
        columns.add(prefix + "oil_c", 2, engine::oilCelsius);
        columns.add(prefix + "fuel_psi", 2, engine::fuelPsi);
        columns.add(prefix + "power_lever_pct", 1, () -> cockpit.at("power-lever-" + number) / 10.0);
        columns.add(prefix + "prop_lever_pct", 1, () -> cockpit.at("prop-lever-" + number) / 10.0);
        columns.add(prefix + "condition_lever_pct", 1, () -> cockpit.at("condition-lever-" + number) / 10.0);
        columns.lamp(prefix + "starter", () -> cockpit.on("start-" + number) && flight.electrics.alive());
        columns.lamp(prefix + "ignition", () -> cockpit.on("ignition-" + number) && flight.electrics.alive());
        columns.lamp(prefix + "boost_pump", () -> cockpit.on("boost-pump-" + side) && flight.electrics.alive());
        columns.lamp(
                prefix + "beta",
                () -> engine.lit() && cockpit.at("power-lever-" + number) < 40 && !flight.plane.airborne());
    }
}
