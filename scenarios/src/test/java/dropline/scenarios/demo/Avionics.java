package dropline.scenarios.demo;

import java.util.Map;
import java.util.TreeMap;

/**
 * Radios, selectors, autopilot buttons, clock and the beacon by the lake: what the crew sets and what follows from it.
 */
final class Avionics {
    /** Seconds since midnight at which the flight begins. */
    private static final int BEGINS = 17 * 3600 + 51 * 60 + 22;

    private static final double BEACON_EAST = -2440;
    private static final double BEACON_NORTH = -2420;

    private final Map<String, Integer> frequencies = new TreeMap<>();
    private final Map<String, Boolean> held = new TreeMap<>();
    private final Map<String, Boolean> modes = new TreeMap<>();
    private final Map<String, Integer> counts = new TreeMap<>();
    private double timerFrom = -1;
    private double identUntil;
    private boolean warningKnown;
    private boolean cautionKnown;

    Avionics() {
        set("com-1", 118_300, 121_000);
        set("com-2", 121_500, 120_100);
        set("nav-1", 110_500, 112_050);
    }

    void step(double seconds, Cockpit cockpit, Airframe plane) {
        for (String selector : new String[] {
            "heading-bug",
            "altitude-select",
            "climb-select",
            "course-select",
            "baro-set",
            "minimum-set",
            "adf-tune",
            "transponder-set"
        }) {
            counts.put(selector, cockpit.at(selector));
        }
        tune("com-1", 25, cockpit);
        tune("com-2", 25, cockpit);
        tune("nav-1", 50, cockpit);
        for (String mode :
                new String[] {"ap-engage", "ap-heading", "ap-nav", "ap-altitude", "ap-climb", "yaw-damper"}) {
            if (pressed(mode, cockpit)) {
                modes.merge(mode, true, (now, change) -> !now);
            }
        }
        if (pressed("clock-start", cockpit)) {
            timerFrom = seconds;
        }
        if (pressed("transponder-ident", cockpit)) {
            identUntil = seconds + 18;
        }
        warningKnown |= pressed("master-warning", cockpit);
        cautionKnown |= pressed("master-caution", cockpit);
        exclude(cockpit, plane);
    }

    /** One lateral mode at a time; altitude is captured when near; the autopilot lets go low on the approach. */
    private void exclude(Cockpit cockpit, Airframe plane) {
        if (cockpit.on("ap-nav")) {
            modes.put("ap-heading", false);
        }
        if (cockpit.on("ap-heading")) {
            modes.put("ap-nav", false);
        }
        if (cockpit.on("ap-climb")) {
            modes.put("ap-altitude", false);
        }
        if (mode("ap-climb") && Math.abs(selectedAltitude() - indicatedAltitude(plane)) < 15) {
            modes.put("ap-climb", false);
            modes.put("ap-altitude", true);
        }
        if (mode("ap-engage") && plane.climbRate() < -1 && plane.heightAboveLake() < 150) {
            modes.clear();
        }
    }

    private boolean pressed(String button, Cockpit cockpit) {
        boolean now = cockpit.on(button);
        boolean before = Boolean.TRUE.equals(held.put(button, now));
        return now && !before;
    }

    private void set(String radio, int active, int standby) {
        frequencies.put(radio + "-active", active);
        frequencies.put(radio + "-standby", standby);
    }

    private void tune(String radio, int step, Cockpit cockpit) {
        int count = cockpit.at(radio + "-tune");
        Integer before = counts.put(radio + "-tune", count);
        int detents = before == null ? count : count - before;
        set(radio, frequency(radio + "-active"), frequency(radio + "-standby") + step * detents);
        if (pressed(radio + "-swap", cockpit)) {
            set(radio, frequency(radio + "-standby"), frequency(radio + "-active"));
        }
    }

    private int count(String selector) {
        return counts.getOrDefault(selector, 0);
    }

    /** Kilohertz, of {@code com-1-active} and the like. */
    int frequency(String radio) {
        return frequencies.getOrDefault(radio, 0);
    }

    boolean mode(String button) {
        return modes.getOrDefault(button, false);
    }

    boolean warningKnown() {
        return warningKnown;
    }

    boolean cautionKnown() {
        return cautionKnown;
    }

    double headingBug() {
        return Airframe.wrap(95 + count("heading-bug"));
    }

    double selectedCourse() {
        return Airframe.wrap(120 + count("course-select"));
    }

    int selectedAltitudeFeet() {
        return 100 * count("altitude-select");
    }

    /** Metres. */
    double selectedAltitude() {
        return selectedAltitudeFeet() * Isa.FEET;
    }

    /** Feet a minute. */
    int selectedClimb() {
        return 100 * count("climb-select");
    }

    int baroHectopascal() {
        return 1013 + count("baro-set");
    }

    int minimumFeet() {
        return 10 * count("minimum-set");
    }

    /** Kilohertz. */
    int adf() {
        return 270 + count("adf-tune");
    }

    /** Four octal digits. */
    int transponderCode() {
        return Integer.parseInt(Integer.toOctalString(02000 + count("transponder-set")));
    }

    boolean ident(double seconds) {
        return seconds < identUntil;
    }

    /** What the altimeter shows, metres: the pressure altitude brought to the pressure set. */
    double indicatedAltitude(Airframe plane) {
        return plane.pressureAltitude() - Isa.metres(100.0 * baroHectopascal());
    }

    int clock(double seconds) {
        return BEGINS + (int) seconds;
    }

    /** Whole seconds since the timer was started. */
    int timer(double seconds) {
        return timerFrom < 0 ? 0 : (int) (seconds - timerFrom);
    }

    /** True bearing of the beacon, degrees. */
    double beaconBearing(Airframe plane) {
        double bearing = StrictMath.atan2(BEACON_EAST - plane.x(), BEACON_NORTH - plane.y());
        return Airframe.wrap(StrictMath.toDegrees(bearing));
    }

    /** Slant range to the beacon, metres. */
    double beaconRange(Airframe plane) {
        double over = StrictMath.hypot(BEACON_EAST - plane.x(), BEACON_NORTH - plane.y());
        return StrictMath.hypot(over, plane.heightAboveLake());
    }

    /** Dots of two degrees off the selected course, -2.5..2.5. */
    double courseDots(Airframe plane) {
        double off = Airframe.shortWay(beaconBearing(plane) - selectedCourse());
        double shown = Math.abs(off) > 90 ? Airframe.shortWay(180 - off) : off;
        return Math.max(-2.5, Math.min(2.5, shown / 2));
    }

    boolean towardsBeacon(Airframe plane) {
        return Math.abs(Airframe.shortWay(beaconBearing(plane) - selectedCourse())) < 90;
    }

    /** Dots of 0.4 degrees off a path of 3.3 degrees to the beacon, -2.5..2.5. */
    double pathDots(Airframe plane) {
        double angle = StrictMath.toDegrees(
                StrictMath.asin(Math.min(1, plane.heightAboveLake() / Math.max(1, beaconRange(plane)))));
        return Math.max(-2.5, Math.min(2.5, (3.3 - angle) / 0.4));
    }
}
