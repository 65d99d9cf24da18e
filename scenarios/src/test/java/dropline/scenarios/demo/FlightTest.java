package dropline.scenarios.demo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** The flight obeys the physics it claims to, and tells the story it claims to tell. */
final class FlightTest {
    private static final double DT = Flight.STEP_NANOS / 1e9;

    @Test
    void turnsInTheAirAreCoordinated() {
        Flight flight = new Flight();
        flight.begin();
        double steepest = 0;
        double heading = flight.plane.heading();
        while (flight.step()) {
            Airframe plane = flight.plane;
            double turned = Airframe.shortWay(plane.heading() - heading);
            heading = plane.heading();
            assertEquals(plane.turnRate() * DT, turned, 1e-9);
            if (plane.airborne() && flight.pilot.phase() != Pilot.Phase.TAKE_OFF) {
                double rate = StrictMath.toDegrees(Isa.GRAVITY * StrictMath.tan(plane.bank()) / plane.airspeed());
                assertEquals(rate, plane.turnRate(), 0.02, () -> "at " + flight.seconds() + " s");
                steepest = Math.max(steepest, StrictMath.toDegrees(plane.bank()));
            }
        }
        assertTrue(steepest > 20, "some turn must be steeper than 20 degrees: steepest=" + steepest);
    }

    @Test
    void verticalSpeedIsTheChangeOfAltitude() {
        Flight flight = new Flight();
        flight.begin();
        double before = flight.plane.altitude();
        while (flight.step()) {
            assertEquals((flight.plane.altitude() - before) / DT, flight.plane.climbRate(), 1e-9);
            before = flight.plane.altitude();
        }
    }

    @Test
    void fuelBurntIsTheIntegralOfFuelFlow() {
        Flight flight = new Flight();
        flight.begin();
        double filled = flight.fuel.total();
        double burnt = 0;
        while (flight.step()) {
            burnt += (flight.engine1.fuelFlow() + flight.engine2.fuelFlow()) * DT / 3600;
        }
        assertEquals(burnt, flight.fuel.used(), 1e-9);
        assertEquals(filled - burnt, flight.fuel.total(), 1e-9);
        assertTrue(burnt > 20, "a flight burns fuel: burnt=" + burnt);
    }

    @Test
    void pressureOutsideIsThatOfTheStandardAtmosphereAtThePressureAltitude() {
        Flight flight = new Flight();
        flight.begin();
        while (flight.step()) {
            double expected = 101_325 * StrictMath.pow(1 - 0.0065 * flight.plane.pressureAltitude() / 288.15, 5.25588);
            assertEquals(expected, flight.plane.pascal(), 0.5);
        }
    }

    /** After one lag time a first-order lag has gone 1 - 1/e of its way. */
    @Test
    void engineSpoolsUpWithAFirstOrderLag() {
        assertEquals(1 - StrictMath.exp(-1), Engine.lag(0, 1, 1.4, 1.4), 1e-12);
        double value = 0;
        for (int i = 0; i < 35; i++) {
            value = Engine.lag(value, 1, 1.4, 0.04);
        }
        assertEquals(1 - StrictMath.exp(-1), value, 1e-12);
    }

    @Test
    void gearAndFlapsTakeTheirTimeToTravel() {
        Flight flight = new Flight();
        flight.begin();
        double moving = 0;
        double flapsBefore = flight.hydraulics.flaps();
        while (flight.step()) {
            moving += flight.hydraulics.gearMoving() ? DT : 0;
            assertTrue(Math.abs(flight.hydraulics.flaps() - flapsBefore) <= 2.5 * DT + 1e-9);
            flapsBefore = flight.hydraulics.flaps();
        }
        assertEquals(6.3, moving, 0.2);
    }

    @Test
    void everyPhaseIsFlown() {
        Flight flight = new Flight();
        flight.begin();
        Set<Pilot.Phase> phases = EnumSet.of(flight.pilot.phase());
        double highest = 0;
        while (flight.step()) {
            phases.add(flight.pilot.phase());
            highest = Math.max(highest, flight.plane.heightAboveLake());
        }
        assertEquals(EnumSet.allOf(Pilot.Phase.class), phases);
        assertEquals(2900, highest / Isa.FEET, 15);
        assertTrue(flight.plane.afloat(), "it ends on the water");
        assertEquals(1, 0.0 + flight.hydraulics.rudders(), 1e-9);
    }

    @Test
    void recordingIsLongAndWideEnough() {
        Flight flight = new Flight();
        List<Columns.Column> columns = Columns.of(flight).list();
        Set<String> names = new TreeSet<>();
        columns.forEach(column -> names.add(column.name()));

        assertTrue(Flight.LENGTH_NANOS >= 600_000_000_000L);
        assertEquals(25, 1_000_000_000L / Flight.STEP_NANOS);
        assertTrue(columns.size() >= 120, () -> "columns=" + columns.size());
        assertEquals(columns.size(), names.size(), "no two columns of one name");
    }

    @Test
    void everyColumnChangesAndHeadingsStayBelow360() {
        Flight flight = new Flight();
        Columns columns = Columns.of(flight);
        double[] first = new double[columns.list().size()];
        double[] now = new double[first.length];
        flight.begin();
        columns.read(first);
        Set<String> still = new TreeSet<>();
        columns.list().forEach(column -> still.add(column.name()));
        int heading = columns.list().stream().map(Columns.Column::name).toList().indexOf("heading_deg");
        while (flight.step()) {
            columns.read(now);
            for (int i = 0; i < now.length; i++) {
                assertTrue(Double.isFinite(now[i]));
                if (now[i] != first[i]) {
                    still.remove(columns.list().get(i).name());
                }
            }
            assertTrue(now[heading] >= 0 && now[heading] < 360, () -> "heading=" + now[heading]);
        }
        assertEquals(Set.of(), still);
    }

    @Test
    void movesRunForwardsAndAreMany() {
        Flight flight = new Flight();
        List<Cockpit.Move> moves = new ArrayList<>();
        flight.begin();
        do {
            moves.addAll(flight.cockpit.takeMoves());
        } while (flight.step());

        for (int i = 1; i < moves.size(); i++) {
            assertTrue(moves.get(i).atNanos() >= moves.get(i - 1).atNanos(), "moves must run forwards");
        }
        assertTrue(moves.size() >= 60, "moves=" + moves.size());
        assertTrue(FlightGenerator.movedControls().size() >= 50);
    }
}
