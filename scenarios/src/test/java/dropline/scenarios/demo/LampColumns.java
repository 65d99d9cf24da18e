package dropline.scenarios.demo;

import java.util.function.BooleanSupplier;

/** Annunciators. The warning test lights all of them; none is lit without current. */
final class LampColumns {
    private final Columns columns;
    private final Flight flight;

    private LampColumns(Columns columns, Flight flight) {
        this.columns = columns;
        this.flight = flight;
    }

    static void add(Columns columns, Flight flight) {
        LampColumns lamps = new LampColumns(columns, flight);
        lamps.warnings();
        lamps.engines();
        lamps.gear();
        lamps.autopilot();
        lamps.heat();
        lamps.beacons();
    }

    private void tested(String name, BooleanSupplier on) {
        columns.lamp(name, () -> flight.electrics.alive() && (on.getAsBoolean() || flight.cockpit.on("warning-test")));
    }

    private void warnings() {
        tested("warning_master", () -> warning() && !flight.avionics.warningKnown());
        tested("caution_master", () -> caution() && !flight.avionics.cautionKnown());
        tested("warning_stall", () -> flight.plane.airborne() && flight.plane.angleOfAttack() > 14);
        tested("warning_gear", this::gearWarning);
        tested("caution_door", () -> flight.seconds() < 30);
        tested("caution_low_volts", () -> flight.electrics.volts() < 25.5);
        tested("caution_hydraulic", () -> flight.hydraulics.psi() < 1200);
        tested("caution_fuel_low_left", () -> flight.fuel.left() < 60);
        tested("caution_fuel_low_right", () -> flight.fuel.right() < 60);
        tested("caution_inverter", () -> !flight.cockpit.on("inverter"));
        tested("lamp_external_power", () -> flight.cockpit.on("external-power"));
        tested("lamp_crossfeed", () -> flight.cockpit.on("crossfeed"));
        tested("lamp_bilge", () -> flight.cockpit.on("bilge-pump"));
    }

    private boolean warning() {
        return flight.cockpit.on("fire-test") || gearWarning();
    }

    /** The legs must agree with the lever, and be up on the water. */
    private boolean gearWarning() {
        return flight.plane.afloat() && flight.hydraulics.leg(0) > 0.5 && flight.seconds() > 150;
    }

    private boolean caution() {
        return flight.electrics.volts() < 25.5 || flight.hydraulics.psi() < 1200 || !flight.cockpit.on("inverter");
    }

    private void engines() {
        Engine[] engines = {flight.engine1, flight.engine2};
        for (int i = 0; i < engines.length; i++) {
            Engine engine = engines[i];
            String number = Integer.toString(i + 1);
            tested("warning_fire" + number, () -> flight.cockpit.on("fire-test"));
            tested("warning_oil" + number, () -> engine.oilPsi() < 40);
            tested("caution_fuel_pressure" + number, () -> engine.fuelPsi() < 12);
            tested(
                    "caution_generator" + number,
                    () -> (number.equals("1") ? flight.electrics.generator1() : flight.electrics.generator2()) < 2);
            tested("caution_chip" + number, () -> false);
        }
    }

    private void gear() {
        String[] legs = {"nose", "left", "right"};
        for (int i = 0; i < legs.length; i++) {
            int leg = i;
            tested("lamp_gear_" + legs[i], () -> flight.hydraulics.leg(leg) >= 1);
        }
        tested("lamp_gear_moving", flight.hydraulics::gearMoving);
        tested("lamp_water_rudders", () -> flight.hydraulics.rudders() >= 1);
        tested("lamp_afloat", flight.plane::afloat);
    }

    private void autopilot() {
        Avionics avionics = flight.avionics;
        for (String mode : new String[] {"engage", "heading", "nav", "altitude", "climb"}) {
            columns.lamp("ap_" + mode, () -> avionics.mode("ap-" + mode));
        }
        columns.lamp("ap_yaw_damper", () -> avionics.mode("yaw-damper"));
    }

    private void heat() {
        for (String item : new String[] {"pitot-heat-1", "pitot-heat-2", "propeller-deice", "windshield-heat"}) {
            columns.lamp("lamp_" + item.replace('-', '_'), () -> flight.cockpit.on(item) && flight.electrics.alive());
        }
    }

    private void beacons() {
        Airframe plane = flight.plane;
        columns.lamp("marker_outer", () -> marker(plane, 4_600, 450, 1));
        columns.lamp("marker_middle", () -> marker(plane, 1_200, 180, 3));
        columns.lamp("lamp_ident", () -> flight.avionics.ident(flight.seconds()));
        columns.lamp(
                "lamp_minimum",
                () -> plane.airborne() && plane.heightAboveLake() / Isa.FEET < flight.avionics.minimumFeet());
        columns.lamp(
                "transponder_reply", () -> flight.cockpit.at("transponder-mode") == 2 && flight.seconds() % 4 < 0.6);
    }

    /** A marker flashes while the aircraft passes over it on the way in. */
    private boolean marker(Airframe plane, double range, double width, double flashesPerSecond) {
        double off = Math.abs(flight.avionics.beaconRange(plane) - range);
        return plane.airborne()
                && plane.climbRate() < 0
                && off < width
                && flight.seconds() * flashesPerSecond % 1 < 0.6;
    }
}
