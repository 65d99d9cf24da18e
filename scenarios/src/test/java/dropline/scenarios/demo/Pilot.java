package dropline.scenarios.demo;

/**
 * Flies the aircraft: looks at it, wishes for a path and moves the power levers. What stays is the phase of the flight.
 */
final class Pilot {
    private static final double FOOT_A_MINUTE = Isa.FEET / 60;

    private Phase phase = Phase.PARKED;
    private double lever;
    private double lastSpeed;
    private int steps;

    enum Phase {
        PARKED,
        TAXI,
        TAKE_OFF,
        CLIMB,
        CRUISE,
        DESCENT,
        APPROACH,
        FLARE,
        ON_WATER
    }

    Phase phase() {
        return phase;
    }

    Airframe.Wish step(long nanos, double dt, Airframe plane, Avionics avionics, Cockpit cockpit) {
        double seconds = nanos / 1e9;
        enterPhase(nanos, seconds, plane, avionics, cockpit);
        movePower(nanos, dt, plane, cockpit);
        double climb = phase == Phase.PARKED || phase == Phase.TAXI ? 0 : climbAngle(plane, avionics);
        double error = Airframe.shortWay(avionics.headingBug() - plane.heading());
        double bank = plane.heightAboveLake() < 60 || phase == Phase.FLARE
                ? 0
                : StrictMath.toRadians(Math.max(-22, Math.min(22, 1.3 * error)));
        boolean lift = phase == Phase.TAKE_OFF && plane.indicatedAirspeed() > 43
                || phase == Phase.CLIMB && plane.heightAboveLake() < 20;
        return new Airframe.Wish(
                climb,
                bank,
                avionics.headingBug(),
                lift,
                cockpit.on("parking-brake"),
                seconds >= Story.SLIPWAY_SECONDS);
    }

    private void enterPhase(long nanos, double seconds, Airframe plane, Avionics avionics, Cockpit cockpit) {
        double toGo = avionics.selectedAltitude() - avionics.indicatedAltitude(plane);
        boolean lined = Math.abs(Airframe.shortWay(avionics.headingBug() - plane.heading())) < 4;
        switch (phase) {
            case PARKED -> enter(Phase.TAXI, seconds >= Story.TAXI_SECONDS);
            case TAXI -> enter(Phase.TAKE_OFF, seconds >= Story.TAKE_OFF_SECONDS);
            case TAKE_OFF -> enter(Phase.CLIMB, plane.heightAboveLake() > 8);
            case CLIMB -> enter(Phase.CRUISE, toGo < 12);
            case CRUISE -> enter(Phase.DESCENT, seconds >= Story.DESCENT_SECONDS);
            case DESCENT -> {
                if (toGo > -25 && lined && seconds > 580) {
                    phase = Phase.APPROACH;
                    cockpit.move(nanos, "flap-lever", 1);
                }
            }
            case APPROACH -> {
                if (plane.heightAboveLake() < 180) {
                    cockpit.move(nanos, "flap-lever", 2);
                }
                enter(Phase.FLARE, plane.heightAboveLake() < 14);
            }
            case FLARE -> enter(Phase.ON_WATER, !plane.airborne());
            case ON_WATER -> cockpit.move(nanos, "flap-lever", plane.airspeed() < 9 ? 0 : 2);
        }
    }

    private void enter(Phase next, boolean now) {
        if (now) {
            phase = next;
        }
    }

    private double climbAngle(Airframe plane, Avionics avionics) {
        double speed = Math.max(30, plane.airspeed());
        double capture = 0.08 * (avionics.selectedAltitude() - avionics.indicatedAltitude(plane));
        double selected = avionics.selectedClimb() * FOOT_A_MINUTE;
        double rate =
                switch (phase) {
                    case CRUISE -> Math.max(-3, Math.min(3, capture));
                    case DESCENT -> Math.max(selected, capture);
                    case APPROACH -> -560 * FOOT_A_MINUTE;
                    case FLARE -> -(0.45 + 0.16 * plane.heightAboveLake());
                    default -> Math.min(capture, speed * 0.16);
                };
        double angle = StrictMath.asin(Math.max(-0.2, Math.min(0.2, rate / speed)));
        boolean bySpeed = phase == Phase.TAKE_OFF || phase == Phase.CLIMB;
        return bySpeed ? Math.min(angle, Math.max(0.02, 0.1 + 0.02 * (plane.indicatedAirspeed() - 61))) : angle;
    }

    private void movePower(long nanos, double dt, Airframe plane, Cockpit cockpit) {
        double speed = plane.indicatedAirspeed();
        double change =
                switch (phase) {
                    case PARKED, FLARE -> -lever / dt;
                    case TAKE_OFF -> (0.97 - lever) / dt;
                    case CLIMB -> ((plane.heightAboveLake() > 120 ? 0.86 : 0.97) - lever) / dt;
                    case TAXI, ON_WATER -> hold(5, speed, dt);
                    case CRUISE -> hold(74, speed, dt);
                    case DESCENT -> hold(68, speed, dt);
                    case APPROACH -> hold(51, speed, dt);
                };
        lastSpeed = speed;
        lever = Math.max(0, Math.min(1, lever + Math.max(-0.3, Math.min(0.3, change)) * dt));
        int position = (int) StrictMath.round(lever * 200) * 5;
        boolean look = steps++ % 3 == 0;
        if (look && Math.abs(position - cockpit.at("power-lever-1")) >= 10) {
            cockpit.move(nanos, "power-lever-1", position);
            cockpit.move(nanos, "power-lever-2", Math.max(0, position - 10));
        }
    }

    /** Lever travel a second that brings the speed to a target without overshoot. */
    private double hold(double target, double speed, double dt) {
        return 0.012 * (target - speed) - 0.10 * (speed - lastSpeed) / dt;
    }
}
