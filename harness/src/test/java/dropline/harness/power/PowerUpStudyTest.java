package dropline.harness.power;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Pit;
import java.io.IOException;
import org.junit.jupiter.api.Test;

final class PowerUpStudyTest {
    private static final long SECOND = 1_000_000_000L;
    private static final String STEPPER = "d: {kind: gauge stepper, shows: dial, speed: 100 /s, zeroing: stop,"
            + " zeroing-speed: 50 /s, draws: 200 mA, rest-draws: 20 mA}";

    private static PowerUp start(Pit pit) throws IOException {
        PowerUp start = PowerUpStudy.with(PowerStudy.of(pit), pit, 1, 1).powerUp();
        assertNotNull(start);
        return start;
    }

    @Test
    void twentyTwoSteppersThatLookForTheirZeroTogetherMakeThePeak() throws IOException {
        PowerUp start = start(SuppliedPit.boards(22, STEPPER));

        PowerUp.Peak peak = start.peaks().get(0);
        assertEquals(22 * (0.1 + 0.2), peak.amps(), 1e-9);
        assertEquals(SECOND, peak.atNanos());
        assertEquals("22 motors look for their zero together", peak.why());
        assertEquals("the last motor has found its zero", start.steps().get(2).what());
        assertEquals(3 * SECOND, start.steps().get(2).atNanos());
    }

    /** Each takes two seconds to its zero: at a second for each address two are at it at a time, less would be more. */
    @Test
    void startedInTurnTheyTakeLess() throws IOException {
        PowerUp start = start(SuppliedPit.boards(22, STEPPER));

        PowerUp.Staggered turn = start.staggered();
        assertNotNull(turn);
        assertEquals(SECOND, turn.delayNanos());
        assertEquals(22 * 0.12 + 2 * 0.18, turn.amps().get(0), 1e-9);
        assertEquals(start.readyNanos() + 21 * SECOND, turn.readyNanos());
    }

    @Test
    void whatTheFirstStateTakesStandsByItself() throws IOException {
        PowerUp.Peak peak = start(SuppliedPit.boards(22, STEPPER)).peaks().get(0);

        assertEquals(22 * 0.3, peak.firstStateAmps(), 1e-9);
        assertTrue(peak.firstStateNanos() > 3 * SECOND, peak::toString);
    }

    @Test
    void everythingIsReadyOnceTheNeedlesStand() throws IOException {
        PowerUp start = start(SuppliedPit.boards(2, STEPPER));

        // up after 1 s, zero after 2 more, then half the scale at 100 a second and a little for the bus
        long least = 3 * SECOND + SECOND / 2;
        assertTrue(start.readyNanos() >= least, start::toString);
        assertTrue(start.readyNanos() < least + SECOND / 4, start::toString);
    }

    @Test
    void withNothingThatStartsTogetherNoDelayHelps() throws IOException {
        PowerUp start = start(SuppliedPit.with("l: {kind: lamp, shows: lamp, draws: 400 mA}"));

        assertEquals(null, start.staggered());
        assertEquals(0.1, start.peaks().get(0).amps(), 1e-9);
        assertEquals("", start.peaks().get(0).why());
    }

    @Test
    void zonesOnOneBoardFollowOneAnotherAtOnce() throws IOException {
        PowerUp start = start(SuppliedPit.with("y: {kind: backlight zone, shows: level, draws: 100 mA},"
                + " z: {kind: backlight zone, shows: level, draws: 100 mA, delay: 5 ms}"));

        assertEquals(5_000_000, start.zoneLagNanos());
    }
}
