package dropline.bus.supply;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Draw;
import dropline.bus.pit.Draws;
import dropline.bus.pit.Gauge;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Indicator.Kind;
import dropline.bus.pit.Inlet;
import dropline.bus.pit.Inlet.Converter;
import dropline.bus.pit.Pit;
import dropline.bus.rule.Ruling;
import dropline.bus.rule.Ruling.Standing;
import java.util.List;
import org.junit.jupiter.api.Test;

final class SuppliesTest {
    private static final Gauge THIN = Gauge.awg(24, true);

    private static Ruling of(SupplyRule rule, Pit pit) {
        List<Ruling> rulings =
                Supplies.rule(pit).stream().filter(r -> r.rule() == rule).toList();
        assertEquals(1, rulings.size());
        return rulings.get(0);
    }

    @Test
    void aPitThatDescribesNoSupplyIsNotJudged() {
        Pit pit = new SupplyPit().board("board", "main", 100, SupplyPit.LINEAR).pit();
        Pit bare = new Pit("bare", 0, null, pit.signals(), pit.segments());

        assertEquals(List.of(), Supplies.rule(bare));
    }

    @Test
    void aSmallPitOnAnAmpleSupplyKeepsEveryRule() {
        Pit pit = new SupplyPit()
                .run("trunk", 0, Gauge.awg(16, true), 3)
                .board("board", "trunk", 100, SupplyPit.LINEAR)
                .pit();

        assertEquals(6, Supplies.rule(pit).size());
        assertTrue(Supplies.rule(pit).stream().allMatch(r -> r.standing() == Standing.HOLDS));
    }

    @Test
    void aLampTestAtTheEndOfAThinWireBrownsABoardOut() {
        Pit pit = new SupplyPit()
                .run("far", 0, THIN, 20)
                .board("board", "far", 40, SupplyPit.LINEAR, lamp(1400, 0))
                .pit();

        Ruling ruling = of(SupplyRule.BROWN_OUT, pit);

        assertEquals(Standing.BROKEN, ruling.standing());
        assertEquals("board, in a lamp test", ruling.where());
        assertEquals(7, ruling.limit());
        double ohms = 0.04 * Conductor.ohmsPerKilometre(THIN, Feeds.WIRE_CELSIUS);
        assertEquals(12 - 1.44 * ohms, ruling.value(), 1e-9);
    }

    @Test
    void whatLampsTakeAsTheyLightCountsForTheMomentOnly() {
        Draws cold = new Draws(
                SupplyPit.milliamps(800), SupplyPit.milliamps(0), SupplyPit.milliamps(9900), 30_000_000, true);
        Pit pit = new SupplyPit()
                .board("board", "main", 200, SupplyPit.LINEAR, SupplyPit.indicator(Kind.FILAMENT_LAMP, cold))
                .pit();

        assertEquals(1.0, of(SupplyRule.RUNNING, pit).value(), 1e-9);
        Ruling starting = of(SupplyRule.STARTING, pit);
        assertEquals(10.1, starting.value(), 1e-9);
        assertEquals(Standing.BROKEN, starting.standing());
        assertEquals("main, as the lamps of a test light", starting.where());
    }

    @Test
    void eightTenthsOfTheRatingHoldAndALittleMoreDoesNot() {
        assertEquals(Standing.HOLDS, of(SupplyRule.RUNNING, drawing(8000)).standing());
        assertEquals(Standing.BROKEN, of(SupplyRule.RUNNING, drawing(8001)).standing());
    }

    private static Pit drawing(long milliamps) {
        return new SupplyPit().board("board", "main", milliamps, Inlet.PLAIN).pit();
    }

    @Test
    void aCurrentThatNobodyStatedLeavesEveryRuleItCouldBreakOpen() {
        Pit pit = new SupplyPit()
                .board("board", "main", Draw.UNKNOWN, SupplyPit.LINEAR)
                .pit();

        Ruling running = of(SupplyRule.RUNNING, pit);

        assertEquals(Standing.UNKNOWN, running.standing());
        assertEquals("1 of 1 currents on it are not stated", running.basis());
        assertEquals(Standing.UNKNOWN, of(SupplyRule.BROWN_OUT, pit).standing());
        assertEquals(Standing.HOLDS, of(SupplyRule.BACK_FEED, pit).standing());
    }

    @Test
    void whatIsBrokenWithoutTheUnstatedIsBrokenWithItToo() {
        Pit pit = new SupplyPit()
                .board("heavy", "main", 9000, Inlet.PLAIN)
                .board("unknown", "main", Draw.UNKNOWN, Inlet.PLAIN)
                .pit();

        assertEquals(Standing.BROKEN, of(SupplyRule.RUNNING, pit).standing());
    }

    @Test
    void aBoardOnUsbAndOnASupplyIsBackFedUnlessIsolated() {
        Inlet usb = new Inlet(Converter.LINEAR, 5, 1, 7, true, false);
        Inlet isolated = new Inlet(Converter.LINEAR, 5, 1, 7, true, true);

        Ruling fed = of(
                SupplyRule.BACK_FEED,
                new SupplyPit()
                        .board("one", "main", 1, usb)
                        .board("two", "main", 1, usb)
                        .pit());

        assertEquals(Standing.BROKEN, fed.standing());
        assertEquals("main, one and 1 more", fed.where());
        Pit safe = new SupplyPit().board("one", "main", 1, isolated).pit();
        assertEquals(Standing.HOLDS, of(SupplyRule.BACK_FEED, safe).standing());
    }

    @Test
    void aSupplyThatCollapsesIsSaidToHaveNoVolts() {
        Pit pit = new SupplyPit()
                .run("far", 0, THIN, 100)
                .board("board", "far", 1000, SupplyPit.SWITCHING)
                .pit();

        Ruling ruling = of(SupplyRule.BROWN_OUT, pit);

        assertEquals(Standing.BROKEN, ruling.standing());
        assertEquals(0, ruling.value());
        assertEquals(Standing.UNKNOWN, of(SupplyRule.RUNNING, pit).standing());
    }

    @Test
    void aRegulatorWithoutAHeatSinkStandsOneWatt() {
        Pit pit = new SupplyPit().board("board", "main", 143, SupplyPit.LINEAR).pit();

        Ruling ruling = of(SupplyRule.HEAT, pit);

        assertEquals(1.001, ruling.value(), 1e-9);
        assertEquals(Standing.BROKEN, ruling.standing());
    }

    private static Indicator lamp(long lit, long dark) {
        return SupplyPit.indicator(Kind.LAMP, SupplyPit.active(lit, dark));
    }
}
