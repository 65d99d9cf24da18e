package dropline.harness.power;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

final class CurrentsTest {
    private static final long SECOND = 1_000_000_000L;
    private static final long MILLI = 1_000_000L;

    @Test
    void aLampLitForAQuarterOfTheTimeTakesAQuarterOfItsCurrentOnAverage() {
        Currents currents = new Currents(SuppliedPit.with("l: {kind: lamp, shows: lamp, draws: 400 mA}"));
        CurrentWatch watch = currents.watches().get(0);
        watch.stateChanged(0, 0, 1, 1);
        watch.stateChanged(0, 0, 2, 0);
        watch.shown(SECOND, 0, 1);
        currents.stretchEnded(SECOND + SECOND / 2);
        watch.shown(2 * SECOND, 0, 2);
        currents.stretchEnded(4 * SECOND);

        Flight.Drawn drawn =
                currents.ended("hand", 4 * SECOND, List.of()).points().get(0);

        assertEquals(0.1 + 0.4 / 4, drawn.mean(), 1e-9);
        assertEquals(0.5, drawn.max(), 1e-9);
        assertEquals(SECOND, drawn.maxNanos());
        assertEquals(0.5, drawn.p99(), 0.001);
    }

    @Test
    void theLeastVoltsAreThoseOfTheMostAmperes() {
        Currents currents = new Currents(SuppliedPit.with("l: {kind: lamp, shows: lamp, draws: 900 mA}"));
        CurrentWatch watch = currents.watches().get(0);
        watch.stateChanged(0, 0, 1, 1);
        watch.shown(3 * SECOND, 0, 1);
        currents.stretchEnded(4 * SECOND);

        Flight flight = currents.ended("hand", 4 * SECOND, List.of());

        // 18 AWG has 20.95 ohm a kilometre at 20 degC (wire table), 7.86 % more at 40; two metres there and back
        double lost = 1.0 * 0.004 * 20.95 * 1.0786;
        assertEquals(12 - lost, flight.boards().get(0).volts(), 0.0005);
        assertEquals(lost / 2, flight.boards().get(0).groundVolts(), 0.0003);
        assertEquals(3 * SECOND, flight.boards().get(0).atNanos());
    }

    @Test
    void aMotorTakesItsCurrentFromItsFirstMotionToItsLast() {
        Currents currents = new Currents(SuppliedPit.with(
                "d: {kind: gauge stepper, shows: dial, speed: 10 /s, draws: 300 mA, rest-draws: 100 mA}"));
        CurrentWatch watch = currents.watches().get(0);
        watch.moved(SECOND, 0, 0, 3 * SECOND, 20);
        // sent on while it moves, then at rest for a second, then on again
        watch.moved(2 * SECOND, 0, 10, 4 * SECOND, 30);
        watch.moved(5 * SECOND, 0, 30, 6 * SECOND, 20);
        currents.stretchEnded(10 * SECOND);

        Flight.Drawn drawn =
                currents.ended("hand", 10 * SECOND, List.of()).points().get(0);

        assertEquals(0.1 + 0.1 + 0.2 * (3 + 1) / 10, drawn.mean(), 1e-9);
        assertEquals(0.4, drawn.max(), 1e-9);
    }

    @Test
    void aFilamentTakesItsStartingCurrentForItsMoment() {
        Currents currents = new Currents(SuppliedPit.with("f: {kind: filament lamp, shows: lamp, rise: 60 ms,"
                + " fall: 90 ms, draws: 80 mA, start-draws: 800 mA, start-lasts: 100 ms}"));
        CurrentWatch watch = currents.watches().get(0);
        watch.stateChanged(0, 0, 1, 1);
        watch.shown(SECOND, 0, 1);
        currents.stretchEnded(SECOND + 50 * MILLI);
        currents.stretchEnded(2 * SECOND);

        Flight.Drawn drawn =
                currents.ended("hand", 2 * SECOND, List.of()).points().get(0);

        assertEquals(0.9, drawn.max(), 1e-9);
        assertEquals(0.1 + (0.08 * 1 + 0.72 * 0.1) / 2, drawn.mean(), 1e-9);
    }

    @Test
    void aZoneTakesWhatItsCurveMakesOfItsLevel() {
        Currents currents =
                new Currents(SuppliedPit.with("z: {kind: backlight zone, shows: level, draws: 400 mA, curve: square}"));
        CurrentWatch watch = currents.watches().get(0);
        watch.stateChanged(0, 1, 1, 50);
        watch.shown(0, 0, 1);
        currents.stretchEnded(SECOND);

        assertEquals(
                0.2, currents.ended("hand", SECOND, List.of()).points().get(0).mean(), 1e-9);
    }

    @Test
    void aBoardThatRestartsIsDark() {
        Currents currents = new Currents(SuppliedPit.with("l: {kind: lamp, shows: lamp, draws: 400 mA}"));
        CurrentWatch watch = currents.watches().get(0);
        watch.stateChanged(0, 0, 1, 1);
        watch.shown(0, 0, 1);
        watch.reset(SECOND, 0, 2 * SECOND);
        currents.stretchEnded(4 * SECOND);

        assertEquals(
                0.1 + 0.4 / 4,
                currents.ended("hand", 4 * SECOND, List.of()).points().get(0).mean(),
                1e-9);
    }

    @Test
    void howTheRunWasCutIntoStretchesDoesNotMatter() {
        assertEquals(cut(1), cut(7));
        assertEquals(cut(1), cut(200));
    }

    private static Flight cut(int stretches) {
        Currents currents = new Currents(SuppliedPit.with("l: {kind: lamp, shows: lamp, draws: 400 mA}"));
        CurrentWatch watch = currents.watches().get(0);
        watch.stateChanged(0, 0, 1, 1);
        watch.stateChanged(0, 0, 2, 0);
        long end = 10 * SECOND;
        long reached = 0;
        for (int i = 1; i <= stretches; i++) {
            long until = end * i / stretches / MILLI * MILLI;
            for (long at = reached / (100 * MILLI) * 100 * MILLI; at < until; at += 100 * MILLI) {
                if (at >= reached) {
                    watch.shown(at, 0, at / (100 * MILLI) % 3 == 0 ? 1 : 2);
                }
            }
            currents.stretchEnded(until);
            reached = until;
        }
        Flight flight = currents.ended("hand", end, List.of());
        Flight.Drawn drawn = flight.points().get(0);
        // means are sums of doubles whose parts depend on the cuts
        return new Flight(
                "hand",
                end,
                List.of(new Flight.Drawn(
                        Math.round(drawn.mean() * 1e9), drawn.p99(), drawn.max(), drawn.maxNanos(), List.of())),
                flight.boards(),
                List.of());
    }

    @Test
    void aLongRunHasNoMoreStretchesThanAShortOne() {
        PointTrack track = new PointTrack();
        track.flowed(0, 3_600 * SECOND, 2);
        track.reaches(3_600 * SECOND, 5);
        track.flowed(3_600 * SECOND, 7_200 * SECOND, 4);

        Flight.Drawn drawn = track.drawn();

        assertEquals(3, drawn.mean(), 1e-9);
        assertTrue(drawn.curve().size() <= PointTrack.MOST);
        assertEquals(2, drawn.curve().get(0).mean(), 1e-9);
        assertEquals(4, drawn.curve().get(drawn.curve().size() - 1).mean(), 1e-9);
        assertEquals(5, drawn.max());
    }
}
