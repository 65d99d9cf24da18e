package dropline.bus.supply;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Draw;
import dropline.bus.pit.Draws;
import dropline.bus.pit.Gauge;
import dropline.bus.pit.Indicator.Kind;
import dropline.bus.pit.Inlet;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

final class FeedsTest {
    private static final Gauge EIGHTEEN = Gauge.awg(18, false);

    private static Flow solve(Pit pit, State state, double celsius) {
        return new Feeds(pit, celsius).solve(Loads.of(Layout.of(pit), state));
    }

    /** Voltage drop of a 12 V supply as worked by ifocus.life: 16 AWG taken as 1.3 mm2 of 0.01785 ohm mm2/m. */
    @Test
    void twentyMetresOfSixteenGaugeLoseFourAndAHalfPerCentOfTwelveVolts() {
        double celsiusOfThatCopper = 20 + (0.01785 / 0.017241 - 1) / 0.00393;
        Pit pit = new SupplyPit()
                .run("cable", 0, Gauge.metric(1.3, false), 20)
                .board("lamp", "cable", 1000, Inlet.PLAIN)
                .pit();

        Flow flow = solve(pit, State.IDLE, celsiusOfThatCopper);

        assertEquals(0.549, 12 - flow.nodeVolts(0), 0.0005);
        assertEquals(0.0458, 1 - flow.nodeVolts(0) / 12, 0.00005);
    }

    /** The same in thick wire, from ohmicaudio.com: 100 A over 15 ft, there and back, of 4, 2 and 1/0 AWG. */
    @Test
    void aHundredAmperesLoseWhatTheWorkedExampleSays() {
        double metres = 15 / 3.28084;
        assertEquals(0.75, lostByAHundredAmperes(Gauge.awg(4, false), metres), 0.02);
        assertEquals(0.48, lostByAHundredAmperes(Gauge.awg(2, false), metres), 0.02);
        assertEquals(0.30, lostByAHundredAmperes(Gauge.metric(53.5, false), metres), 0.01);
    }

    private static double lostByAHundredAmperes(Gauge gauge, double metres) {
        Pit pit = new SupplyPit()
                .run("cable", 0, gauge, metres)
                .board("amplifier", "cable", 100_000, Inlet.PLAIN)
                .pit();
        return 12 - solve(pit, State.IDLE, 20).nodeVolts(0);
    }

    /** electricianmath.com: 400 ft of 18 AWG at 6.505 ohm per 1000 ft, a temperature it does not state: 2.602 ohm. */
    @Test
    void fourHundredFeetOfEighteenGaugeHaveTwoAndAHalfOhms() {
        double celsius = 20 + (6.505 / 6.385 - 1) / 0.00393;
        Pit pit = new SupplyPit()
                .supply(12, 10)
                .run("cable", 0, EIGHTEEN, 200 / 3.28084)
                .board("load", "cable", 1000, Inlet.PLAIN)
                .pit();

        assertEquals(2.602, 12 - solve(pit, State.IDLE, celsius).nodeVolts(0), 0.005);
    }

    @Test
    void halfOfWhatIsLostLiftsTheGround() {
        Pit pit = new SupplyPit()
                .run("trunk", 0, EIGHTEEN, 5)
                .run("branch", 1, EIGHTEEN, 2)
                .board("near", "trunk", 800, Inlet.PLAIN)
                .board("far", "branch", 400, Inlet.PLAIN)
                .pit();

        double[] ground = Supplies.groundVolts(pit, State.IDLE);
        Flow flow = solve(pit, State.IDLE, Feeds.WIRE_CELSIUS);

        assertEquals((12 - flow.nodeVolts(0)) / 2, ground[0], 1e-9);
        assertEquals((12 - flow.nodeVolts(1)) / 2, ground[1], 1e-9);
        assertEquals(1.2, flow.amps(0), 1e-9);
        assertEquals(0.4, flow.amps(2), 1e-9);
        assertTrue(ground[1] > ground[0]);
    }

    /** V = (V0 + sqrt(V0^2 - 4 R P)) / 2, the greater root of V = V0 - R P / V. */
    @Test
    void aSwitchingBoardTakesTheSamePowerAtFewerVolts() {
        Pit pit = new SupplyPit()
                .run("cable", 0, EIGHTEEN, 30)
                .board("board", "cable", 1000, SupplyPit.SWITCHING)
                .pit();
        double ohms = 2 * 0.03 * Conductor.ohmsPerKilometre(EIGHTEEN, 20);

        Flow flow = solve(pit, State.IDLE, 20);

        double volts = (12 + Math.sqrt(144 - 4 * ohms * 12)) / 2;
        assertEquals(volts, flow.nodeVolts(0), 1e-9);
        assertEquals(12 / volts, flow.nodeAmps(0), 1e-9);
    }

    @Test
    void aSupplyCollapsesExactlyWhereTheRootIsGone() {
        double ohmsPerMetre = 2 * Conductor.ohmsPerKilometre(EIGHTEEN, 20) / 1000;
        double longest = 144 / (4 * 12 * ohmsPerMetre);

        assertTrue(switching(longest * 0.9999).stands(0));
        Flow gone = switching(longest * 1.0001);

        assertFalse(gone.stands(0));
        assertEquals(0, gone.nodeVolts(0));
        assertTrue(Double.isNaN(gone.amps(0)));
    }

    private static Flow switching(double metres) {
        Pit pit = new SupplyPit()
                .run("cable", 0, EIGHTEEN, metres)
                .board("board", "cable", 1000, SupplyPit.SWITCHING)
                .pit();
        return solve(pit, State.IDLE, 20);
    }

    @Test
    void whatASwitchingBoardHandsOnIsTakenFromItsSupplyAtTheSupplysVolts() {
        Pit pit = new SupplyPit()
                .board(
                        "board",
                        "main",
                        0,
                        SupplyPit.SWITCHING,
                        SupplyPit.indicator(Kind.LAMP, SupplyPit.active(960, 0)))
                .pit();

        // 0.96 A at 5 V through a converter of 80 % are 6 W: half an ampere at 12 V
        assertEquals(0.5, solve(pit, State.LAMP_TEST, 20).amps(0), 1e-9);
        assertEquals(0, solve(pit, State.IN_FLIGHT, 20).amps(0), 1e-9);
    }

    @Test
    void aLinearRegulatorTurnsTheVoltsThatAreTooManyIntoHeat() {
        Draws straight = new Draws(SupplyPit.milliamps(500), SupplyPit.milliamps(0), Draw.UNKNOWN, 0, false);
        Pit pit = new SupplyPit()
                .board(
                        "board",
                        "main",
                        100,
                        SupplyPit.LINEAR,
                        SupplyPit.indicator(Kind.LAMP, SupplyPit.active(50, 0)),
                        SupplyPit.indicator(Kind.BACKLIGHT_ZONE, straight))
                .pit();

        Flow flow = solve(pit, State.LAMP_TEST, 20);

        assertEquals((12 - 5) * 0.15, flow.regulatorWatts(0), 1e-9);
        assertEquals(0.65, flow.amps(0), 1e-9);
    }

    /** Kirchhoff's laws on trees of all shapes: every run's amps are those behind it, its volts drop by Ohm's law. */
    @Test
    void everyTreeObeysKirchhoff() {
        for (long seed = 1; seed <= 200; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            SupplyPit tree = new SupplyPit();
            int runs = 1 + random.nextInt(12);
            for (int r = 0; r < runs; r++) {
                tree.run("run" + r, random.nextInt(r + 1), Gauge.awg(12 + random.nextInt(10), true), random.nextInt(4));
            }
            for (int n = 0; n < 10; n++) {
                Inlet inlet = random.nextBoolean() ? SupplyPit.SWITCHING : SupplyPit.LINEAR;
                tree.board("board" + n, "run" + random.nextInt(runs), random.nextInt(200), inlet);
            }
            Pit pit = tree.pit();
            Feeds feeds = new Feeds(pit, 40);
            Flow flow = feeds.solve(Loads.of(Layout.of(pit), State.IDLE));
            for (int point = 0; point <= runs; point++) {
                double behind = 0;
                for (int fed : pit.supplies().fedFrom(point)) {
                    behind += flow.amps(fed);
                    var run = pit.supplies().runs().get(fed - 1);
                    double ohms = 2 * run.metres() / 1000 * Conductor.ohmsPerKilometre(run.gauge(), 40);
                    assertEquals(flow.volts(point) - ohms * flow.amps(fed), flow.volts(fed), 1e-9, "seed " + seed);
                }
                for (int n = 0; n < 10; n++) {
                    behind += feeds.point(n) == point ? flow.nodeAmps(n) : 0;
                }
                assertEquals(behind, flow.amps(point), 1e-9, "seed " + seed + " point " + point);
            }
        }
    }
}
