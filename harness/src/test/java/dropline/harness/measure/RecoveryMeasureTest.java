package dropline.harness.measure;

import static dropline.harness.measure.SmallPit.ALTITUDE;
import static dropline.harness.measure.SmallPit.ALTITUDE_DIGITS;
import static dropline.harness.measure.SmallPit.GEAR;
import static dropline.harness.measure.SmallPit.LEFT;
import static dropline.harness.measure.SmallPit.MS;
import static dropline.harness.measure.SmallPit.SPEED;
import static dropline.harness.measure.SmallPit.SPEED_NEEDLE;
import static dropline.harness.measure.SmallPit.TOGGLE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.harness.measure.PanelRecovery.Lack;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** A fault from 1,000 ms to 2,000 ms; updates may take 100 ms, controls 50 ms. */
final class RecoveryMeasureTest {
    private static final Pit PIT = SmallPit.pit();

    private final RecoveryMeasure measure = measure(Map.of());

    @Test
    void aPanelInTimeIsUntouched() {
        altitude(500, 600, 2);
        altitude(1_500, 1_600, 3);

        PanelRecovery altimeter = ended("altimeter", 5_000);

        assertFalse(altimeter.touched());
        assertEquals(100 * MS, altimeter.worstUpdateNanos());
        assertEquals(Lack.NOTHING, altimeter.lack());
    }

    @Test
    void whatWasLateBeforeTheFaultIsNotItsDoing() {
        altitude(500, 700, 2);

        PanelRecovery altimeter = ended("altimeter", 5_000);

        assertFalse(altimeter.touched());
        assertEquals(0, altimeter.worstUpdateNanos());
    }

    @Test
    void recoveryLastsUntilTheLastLateChangeIsShown() {
        altitude(1_900, 2_250, 2);
        altitude(2_300, 2_460, 3);
        altitude(2_500, 2_600, 4);

        PanelRecovery altimeter = ended("altimeter", 5_000);

        assertTrue(altimeter.touched());
        assertEquals(460 * MS, altimeter.recoveryNanos());
        assertEquals(350 * MS, altimeter.worstUpdateNanos());
        assertEquals(Lack.NOTHING, altimeter.lack());
    }

    @Test
    void whatWasShownLateWithinTheFaultHasRecoveredAtItsEnd() {
        altitude(1_200, 1_800, 2);

        PanelRecovery altimeter = ended("altimeter", 5_000);

        assertTrue(altimeter.touched());
        assertEquals(0, altimeter.recoveryNanos());
    }

    @Test
    void aChangeNeverShownNeverRecovers() {
        changed(1_500, ALTITUDE, 2, 7);

        PanelRecovery altimeter = ended("altimeter", 5_000);

        assertEquals(Lack.WAITING, altimeter.lack());
        assertEquals(3_500 * MS, altimeter.worstUpdateNanos());
    }

    @Test
    void aChangeThatMayStillBeInTimeAtTheEndIsNoLack() {
        changed(4_900, ALTITUDE, 2, 7);

        assertFalse(ended("altimeter", 5_000).touched());
    }

    @Test
    void aChangeUndoneBeforeItWasSentNeedNotBeShown() {
        measure.stateChanged(1_500 * MS, ALTITUDE, 2, 7);
        measure.stateChanged(1_510 * MS, ALTITUDE, 3, 0);
        measure.stateSent(1_520 * MS);

        assertFalse(ended("altimeter", 5_000).touched());
    }

    @Test
    void aNodeThatRestartsIsStaleUntilItIsSentItsValuesAgain() {
        measure.reset(1_000 * MS, LEFT, 1_100 * MS);
        for (int slot = 0; slot < 3; slot++) {
            measure.shown(2_300 * MS, slot, 1);
        }

        PanelRecovery lamps = ended("lamps", 5_000);

        assertEquals(300 * MS, lamps.recoveryNanos());
        assertEquals(1_300 * MS, lamps.worstUpdateNanos());
        assertEquals(Lack.NOTHING, lamps.lack());
        assertFalse(panel(measure, "altimeter").touched());
    }

    @Test
    void aForgottenValueThatIsNotSentAgainNeverRecovers() {
        measure.reset(1_000 * MS, LEFT, 1_100 * MS);

        assertEquals(Lack.FORGOTTEN, ended("lamps", 5_000).lack());
    }

    @Test
    void aNeedleThatGoesElsewhereStandsWrongUntilItIsRight() {
        needle(1_500, 2, 50, 62);
        needle(2_700, 3, 60, 60);

        PanelRecovery airspeed = ended("airspeed", 5_000);

        assertTrue(airspeed.stoodWrong());
        assertEquals(710 * MS, airspeed.recoveryNanos());
        assertEquals(Lack.NOTHING, airspeed.lack());
    }

    @Test
    void aNeedleThatStaysWrongNeverRecovers() {
        needle(1_500, 2, 50, 62);

        assertEquals(Lack.WRONG, ended("airspeed", 5_000).lack());
    }

    @Test
    void aNeedleThatSlipsWhileItRestsStandsWrong() {
        needle(500, 2, 50, 50);
        measure.moved(1_000 * MS, SPEED_NEEDLE, 50, 1_000 * MS, 62);

        assertEquals(Lack.WRONG, ended("airspeed", 5_000).lack());
    }

    @Test
    void aMoveTheHostIsToldLateIsLate() {
        measure.controlMoved(2_500 * MS, TOGGLE, 1, 1);
        measure.sampled(2_520 * MS, TOGGLE, 1);
        measure.told(2_600 * MS, TOGGLE, 1);

        PanelRecovery altimeter = ended("altimeter", 5_000);

        assertEquals(600 * MS, altimeter.recoveryNanos());
        assertEquals(100 * MS, altimeter.worstControlNanos());
    }

    @Test
    void aMoveTheHostIsNotToldNeverRecovers() {
        measure.controlMoved(2_500 * MS, TOGGLE, 1, 1);
        measure.sampled(2_520 * MS, TOGGLE, 1);

        PanelRecovery altimeter = ended("altimeter", 5_000);

        assertEquals(Lack.UNTOLD, altimeter.lack());
        assertEquals(1, altimeter.moreLostSteps());
    }

    @Test
    void aPanelIsNotHeldToMoreThanItKeepsWithoutAFault() {
        altitude(1_500, 1_700, 2);
        PanelRecovery healthy = ended("altimeter", 5_000);
        RecoveryMeasure faulty = measure(
                Map.of("altimeter", PanelLimit.of(healthy.panel().budget()).orAsIn(healthy)));

        feedAltitude(faulty, 1_500, 1_700, 2);
        faulty.ended(5_000 * MS);

        assertTrue(healthy.touched());
        assertFalse(panel(faulty, "altimeter").touched());
    }

    private static RecoveryMeasure measure(Map<String, PanelLimit> limits) {
        RecoveryMeasure measure =
                new RecoveryMeasure(PIT, Layout.of(PIT), 0, new RecoveryMeasure.Span(1_000 * MS, 2_000 * MS), limits);
        for (int signal = GEAR; signal <= ALTITUDE; signal++) {
            measure.stateChanged(0, signal, 1, 0);
        }
        measure.stateSent(0);
        for (int slot = 0; slot < 5; slot++) {
            measure.shown(MS, slot, 1);
        }
        return measure;
    }

    private void changed(long atMillis, int signal, int serial, long value) {
        measure.stateChanged(atMillis * MS, signal, serial, value);
        measure.stateSent(atMillis * MS);
    }

    private void altitude(long changedMillis, long shownMillis, int serial) {
        feedAltitude(measure, changedMillis, shownMillis, serial);
    }

    private static void feedAltitude(RecoveryMeasure measure, long changedMillis, long shownMillis, int serial) {
        measure.stateChanged(changedMillis * MS, ALTITUDE, serial, serial);
        measure.stateSent(changedMillis * MS);
        measure.shown(shownMillis * MS, ALTITUDE_DIGITS, serial);
    }

    /** A change of speed, shown in 10 ms by a needle that goes to this position. */
    private void needle(long atMillis, int serial, long value, long to) {
        changed(atMillis, SPEED, serial, value);
        measure.moved((atMillis + 10) * MS, SPEED_NEEDLE, 0, (atMillis + 50) * MS, to);
        measure.shown((atMillis + 10) * MS, SPEED_NEEDLE, serial);
    }

    private PanelRecovery ended(String panel, long atMillis) {
        measure.ended(atMillis * MS);
        return panel(measure, panel);
    }

    private static PanelRecovery panel(RecoveryMeasure measure, String name) {
        return measure.panels().stream()
                .filter(panel -> panel.panel().name().equals(name))
                .findFirst()
                .orElseThrow();
    }
}
