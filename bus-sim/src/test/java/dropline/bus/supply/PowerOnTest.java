package dropline.bus.supply;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.Pits;
import dropline.bus.pit.Dimming;
import dropline.bus.pit.Draw;
import dropline.bus.pit.Draws;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Indicator.Kind;
import dropline.bus.pit.Motion;
import dropline.bus.pit.Pit;
import dropline.bus.supply.PowerOn.Phase;
import dropline.bus.supply.PowerOn.Why;
import java.util.List;
import org.junit.jupiter.api.Test;

final class PowerOnTest {
    private static final long SECOND = 1_000_000_000L;

    /** A signal of 0..1000 at 100 a second takes ten seconds to its zero. */
    private static Pit twoSteppers() {
        Indicator stepper = SupplyPit.indicator(Kind.GAUGE_STEPPER, SupplyPit.active(40, 10));
        return new SupplyPit()
                .board("one", "main", 50, SupplyPit.LINEAR, stepper)
                .board("two", "main", 50, SupplyPit.LINEAR, stepper)
                .pit();
    }

    @Test
    void motorsLookForTheirZeroOnceTheirBoardIsUp() {
        PowerOn start = PowerOn.of(twoSteppers(), 0);

        assertEquals(
                List.of(
                        new Phase(Why.MOTORS_LOOK_FOR_THEIR_ZERO, 0, 0, true, 0, 10 * SECOND, 30_000),
                        new Phase(Why.MOTORS_LOOK_FOR_THEIR_ZERO, 1, 1, true, 0, 10 * SECOND, 30_000)),
                start.phases());
        assertEquals(10 * SECOND, start.zeroedNanos());
        assertEquals(0, start.upNanos());
    }

    @Test
    void eachBoardWaitsForTheAddressesBeforeItsOwn() {
        PowerOn start = PowerOn.of(twoSteppers(), SECOND);

        assertEquals(0, start.phases().get(0).fromNanos());
        assertEquals(SECOND, start.phases().get(1).fromNanos());
        assertEquals(11 * SECOND, start.zeroedNanos());
    }

    @Test
    void aDisplayComesOnWithItsSupplyAndAServoJumpsAtItsFullSpeed() {
        Draws vfd = new Draws(
                SupplyPit.milliamps(250), SupplyPit.milliamps(150), SupplyPit.milliamps(500), SECOND / 2, true);
        Draws servo = new Draws(
                SupplyPit.milliamps(150), SupplyPit.milliamps(10), SupplyPit.milliamps(600), SECOND / 20, true);
        Indicator jumps = new Indicator(
                "servo",
                Kind.SERVO,
                List.of(0),
                0,
                20 * Pits.MILLI,
                0,
                Indicator.Blocks.NOTHING,
                Motion.atOnce(500),
                Indicator.Glow.NONE,
                servo,
                Dimming.PLAIN);
        Pit pit = new SupplyPit()
                .board("one", "main", 50, SupplyPit.LINEAR, SupplyPit.indicator(Kind.VFD, vfd), jumps)
                .pit();

        List<Phase> phases = PowerOn.of(pit, 0).phases();

        assertEquals(
                List.of(
                        new Phase(Why.DISPLAYS_COME_ON, 0, 0, true, 0, SECOND / 2, 350_000),
                        new Phase(Why.SERVOS_JUMP, 1, 0, true, 0, 2 * SECOND, 140_000),
                        new Phase(Why.SERVOS_JUMP, 1, 0, true, 0, SECOND / 20, 450_000)),
                phases);
    }

    @Test
    void whatNobodyStatedTakesNoMoreButStillHasToFindItsZero() {
        Draws unstated = Draws.always(Draw.UNKNOWN, true);
        Pit pit = new SupplyPit()
                .board("one", "main", 50, SupplyPit.LINEAR, SupplyPit.indicator(Kind.GAUGE_STEPPER, unstated))
                .pit();

        assertTrue(PowerOn.of(pit, 0).phases().isEmpty());
        assertEquals(10 * SECOND, PowerOn.of(pit, 0).zeroedNanos());
    }
}
