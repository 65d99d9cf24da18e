package dropline.bus.supply;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Gauge;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Indicator.Kind;
import dropline.bus.pit.Pit;
import org.junit.jupiter.api.Test;

/** By hand, Ohm's law: linear regulators take the same current at every voltage. */
final class FarBoardTest {
    private static final Gauge THIN = Gauge.awg(24, true);

    @Test
    void readsWhatItsCurrentLeavesOfTheSupply() {
        Indicator lamp = SupplyPit.indicator(Kind.LAMP, SupplyPit.active(300, 0));
        Pit pit = new SupplyPit()
                .run("near", 0, THIN, 1)
                .run("far", 0, THIN, 5)
                .board("one", "near", 100, SupplyPit.LINEAR, lamp)
                .board("two", "far", 100, SupplyPit.LINEAR, lamp)
                .pit();
        double ohms = new Feeds(pit, Feeds.WIRE_CELSIUS).ohms(2);

        FarBoard far = FarBoard.of(pit, 0).orElseThrow();

        assertEquals(1, far.node());
        assertEquals("far", far.run());
        assertEquals(12, far.supplyVolts());
        assertEquals(12 - 0.4 * ohms, far.volts(), 1e-9);
        assertEquals(12 - 0.1 * ohms, far.idleVolts(), 1e-9);
        assertEquals(12 - 0.4 * (ohms + 0.5), far.badJoints().get(0).volts(), 1e-9);
        assertEquals(12 - 0.4 * (ohms + 2), far.badJoints().get(1).volts(), 1e-9);
    }

    @Test
    void nothingIsReadWhereNoSupplyIsDescribed() {
        Pit pit = new SupplyPit().board("board", "main", 100, SupplyPit.LINEAR).pit();
        Pit bare = new Pit("bare", 0, null, pit.signals(), pit.segments());

        assertTrue(FarBoard.of(bare, 0).isEmpty());
    }
}
