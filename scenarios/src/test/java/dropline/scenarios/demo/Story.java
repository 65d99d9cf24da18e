package dropline.scenarios.demo;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What the crew moves at fixed times, from the cold cockpit to the mooring. The {@link Pilot} moves levers beside it.
 */
final class Story {
    static final double SLIPWAY_SECONDS = 118;
    static final double TAXI_SECONDS = 92;
    static final double TAKE_OFF_SECONDS = 170;
    static final double DESCENT_SECONDS = 478;

    private static final double SECOND = 1e9;

    private final List<Cockpit.Move> moves = new ArrayList<>();
    private final Cockpit counts = new Cockpit();
    private int next;

    Story() {
        coldCockpit();
        startEngine("1", 13);
        startEngine("2", 43);
        beforeTaxi();
        taxi();
        takeOffAndClimb();
        cruise();
        night();
        warningTest();
        descend();
        moves.sort(Comparator.comparingLong(Cockpit.Move::atNanos));
    }

    /** Makes the moves that are due. */
    void advanceTo(long nanos, Cockpit cockpit) {
        while (next < moves.size() && moves.get(next).atNanos() <= nanos) {
            Cockpit.Move move = moves.get(next++);
            cockpit.move(move.atNanos(), move.control(), move.value());
        }
    }

    private void coldCockpit() {
        put(0, "gear-lever", 1);
        put(0, "parking-brake", 1);
        put(0, "audio-selector", 1);
        put(3.1, "battery", 1);
        put(4.6, "external-power", 1);
        put(6.3, "beacon-light", 1);
        put(7.7, "inverter", 1);
        put(9.2, "boost-pump-left", 1);
        put(10.4, "boost-pump-right", 1);
    }

    private void startEngine(String engine, double at) {
        put(at, "ignition-" + engine, 1);
        put(at + 1.2, "start-" + engine, 1);
        slide(at + 8, "condition-lever-" + engine, 0, 1000, 1.2);
        put(at + 23, "start-" + engine, 0);
        put(at + 24.5, "ignition-" + engine, 0);
        put(at + 27.3, "generator-" + engine, 1);
    }

    private void beforeTaxi() {
        slide(72, "prop-lever-1", 0, 1000, 2);
        slide(72.1, "prop-lever-2", 0, 1000, 2);
        put(75.4, "external-power", 0);
        turn(76.5, "baro-set", -4, 4);
        turn(78, "com-1-tune", 28, 12);
        press(81, "com-1-swap", 0.14);
        turn(82, "nav-1-tune", 35, 14);
        press(85.2, "nav-1-swap", 0.12);
        turn(86, "transponder-set", 43, 15);
        put(84.4, "position-lights", 1);
        put(85.8, "taxi-light", 1);
        press(89.6, "clock-start", 0.2);
        put(90.6, "transponder-mode", 2);
        put(91.5, "parking-brake", 0);
    }

    private void taxi() {
        turn(97, "heading-bug", 8, 10);
        turn(102, "altitude-select", 35, 12);
        turn(107, "climb-select", 12, 6);
        turn(110, "minimum-set", 20, 10);
        turn(114, "adf-tune", 62, 20);
        put(134, "water-rudders", 1);
        put(137, "bilge-pump", 1);
        put(138.8, "gear-lever", 0);
        turn(141, "heading-bug", 147, 25);
        put(149, "bilge-pump", 0);
        put(152.5, "flap-lever", 1);
        turn(154.2, "elevator-trim", 9, 8);
        turn(156, "rudder-trim", 4, 6);
        put(160, "taxi-light", 0);
        put(161.5, "strobe-lights", 1);
        put(163, "pitot-heat-1", 1);
        put(163.7, "pitot-heat-2", 1);
        put(165, "landing-lights", 1);
        put(167.5, "water-rudders", 0);
    }

    private void takeOffAndClimb() {
        put(215.5, "flap-lever", 0);
        turn(219, "elevator-trim", -6, 7);
        press(221, "yaw-damper", 0.15);
        turn(226, "heading-bug", 90, 22);
        slide(234, "prop-lever-1", 1000, 700, 1.6);
        slide(234.2, "prop-lever-2", 1000, 700, 1.6);
        put(242, "landing-lights", 0);
        press(248, "com-1-swap", 0.13);
        turn(262, "heading-bug", 80, 22);
        press(290, "ap-engage", 0.18);
        press(292.4, "ap-heading", 0.15);
        press(294.1, "ap-altitude", 0.16);
        press(297.2, "transponder-ident", 0.3);
    }

    private void cruise() {
        turn(338, "elevator-trim", -5, 6);
        turn(345, "course-select", 70, 24);
        press(352, "ap-nav", 0.14);
        press(366, "ap-heading", 0.14);
        turn(372, "heading-bug", 30, 15);
        turn(380, "com-2-tune", 53, 18);
        press(384.5, "com-2-swap", 0.15);
        put(386, "audio-selector", 2);
        put(410.5, "crossfeed", 1);
        put(427, "crossfeed", 0);
        turn(430, "heading-bug", 90, 24);
        put(441, "propeller-deice", 1);
        put(443, "windshield-heat", 1);
        put(449, "propeller-deice", 0);
    }

    private void night() {
        slide(392, "instrument-dimmer", 0, 620, 4);
        slide(398, "overhead-dimmer", 0, 450, 3);
        slide(403, "console-dimmer", 0, 400, 3);
        put(408, "cabin-light", 1);
        put(420, "cabin-light", 0);
        slide(424, "instrument-dimmer", 620, 480, 2);
    }

    private void warningTest() {
        press(455, "warning-test", 3.2);
        press(461, "fire-test", 2.1);
        press(466, "master-warning", 0.2);
        press(467.3, "master-caution", 0.2);
    }

    private void descend() {
        turn(470, "altitude-select", -20, 10);
        turn(474, "climb-select", -22, 11);
        press(477.6, "ap-climb", 0.15);
        turn(481, "elevator-trim", -3, 5);
        turn(500, "com-1-tune", -16, 12);
        press(503, "com-1-swap", 0.15);
        turn(471, "heading-bug", 70, 22);
        turn(540, "course-select", 60, 22);
        turn(548, "baro-set", 2, 2);
        turn(551, "baro-set", -2, 2);
        put(560, "landing-lights", 1);
        turn(566, "nav-1-tune", -12, 10);
        press(569, "nav-1-swap", 0.14);
        slide(574, "prop-lever-1", 700, 1000, 1.8);
        slide(574.2, "prop-lever-2", 700, 1000, 1.8);
        put(735, "water-rudders", 1);
        put(741, "strobe-lights", 0);
        put(743, "landing-lights", 0);
        put(744, "taxi-light", 1);
        turn(746, "heading-bug", -60, 18);
    }

    private void put(double seconds, String control, int value) {
        moves.add(new Cockpit.Move(StrictMath.round(seconds * SECOND), control, value));
    }

    private void press(double seconds, String control, double held) {
        put(seconds, control, 1);
        put(seconds + held, control, 0);
    }

    /** Turns an encoder by so many detents, at a steady rate. */
    private void turn(double seconds, String control, int detents, double perSecond) {
        int count = counts.at(control);
        for (int i = 1; i <= Math.abs(detents); i++) {
            int value = count + Integer.signum(detents) * i;
            put(seconds + i / perSecond, control, value);
            counts.move(0, control, value);
        }
    }

    /** Moves a lever or a dimmer, twelve readings a second. */
    private void slide(double seconds, String control, int from, int to, double lasts) {
        int readings = (int) StrictMath.ceil(lasts * 12);
        for (int i = 1; i <= readings; i++) {
            put(seconds + lasts * i / readings, control, from + (to - from) * i / readings);
        }
    }
}
