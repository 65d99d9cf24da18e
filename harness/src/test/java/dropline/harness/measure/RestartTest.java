package dropline.harness.measure;

import static dropline.harness.measure.SmallPit.ALTITUDE;
import static dropline.harness.measure.SmallPit.ALTITUDE_DIGITS;
import static dropline.harness.measure.SmallPit.GEAR;
import static dropline.harness.measure.SmallPit.GEAR_LAMP;
import static dropline.harness.measure.SmallPit.LEFT;
import static dropline.harness.measure.SmallPit.MS;
import static dropline.harness.measure.SmallPit.RIGHT;
import static dropline.harness.measure.SmallPit.SECOND_GEAR_LAMP;
import static dropline.harness.measure.SmallPit.SPEED;
import static dropline.harness.measure.SmallPit.SPEED_NEEDLE;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** What becomes of the figures when a node restarts and forgets what it showed. */
class RestartTest {
    private final SegmentMeasures measures = SmallPit.measures();

    @Test
    void valueShownAgainIsARecoveryAndNoNewChange() {
        SmallPit.start(measures);
        change(100 * MS, 2, 1, 120 * MS);

        measures.reset(1_000 * MS, LEFT, 1_200 * MS);
        shown(1_700 * MS, 2);
        measures.ended(5_000 * MS);

        SlotMeasure lamp = SmallPit.slot(measures, GEAR_LAMP);
        assertEquals(1, lamp.latency().count());
        assertEquals(20 * MS, lamp.latency().maxNanos());
        assertEquals(700 * MS, lamp.recoveryNanos());
        assertEquals(0, lamp.staleNanos());
        assertEquals(0, lamp.lost());
        assertEquals(0, SmallPit.slot(measures, SECOND_GEAR_LAMP).recoveryNanos(), "the other node did not restart");
    }

    @Test
    void panelRecoversWithItsSlowestSlot() {
        SmallPit.start(measures);
        measures.reset(1_000 * MS, RIGHT, 1_200 * MS);
        measures.shown(1_300 * MS, SECOND_GEAR_LAMP, 1);
        measures.shown(1_800 * MS, ALTITUDE_DIGITS, 1);
        measures.ended(5_000 * MS);

        PanelMeasure panel = measures.panels().get(3);
        assertEquals(800 * MS, panel.recoveryNanos());
        assertEquals(0, panel.staleNanos());
        assertEquals(0, measures.panels().get(0).recoveryNanos());
    }

    @Test
    void changeNotShownBeforeTheRestartIsTimedThroughIt() {
        SmallPit.start(measures);
        measures.stateChanged(100 * MS, GEAR, 2, 1);
        measures.stateSent(100 * MS);
        measures.queued(100 * MS, LEFT, GEAR, 2);
        measures.carried(101 * MS, LEFT, GEAR, 2, 1);
        measures.applied(103 * MS, GEAR_LAMP, 2, 102 * MS);
        measures.reset(104 * MS, LEFT, 300 * MS);
        measures.carried(400 * MS, LEFT, GEAR, 2, 9);
        measures.applied(403 * MS, GEAR_LAMP, 2, 401 * MS);
        measures.shown(410 * MS, GEAR_LAMP, 2);
        measures.ended(5_000 * MS);

        SlotMeasure lamp = SmallPit.slot(measures, GEAR_LAMP);
        assertEquals(310 * MS, lamp.latency().maxNanos());
        assertEquals(300 * MS, lamp.worstStageNanos(2), "in the queue until the frame that delivered");
        assertEquals(7 * MS, lamp.worstStageNanos(5));
        assertEquals(306 * MS, lamp.recoveryNanos());
    }

    @Test
    void changeAfterTheRestartIsTimedFromItselfThoughAnOlderOneIsShownFirst() {
        SmallPit.start(measures);
        change(100 * MS, 2, 1, 120 * MS);
        measures.reset(1_000 * MS, LEFT, 1_200 * MS);
        measures.stateChanged(1_500 * MS, GEAR, 3, 2);
        measures.stateSent(1_500 * MS);
        shown(1_520 * MS, 2);
        shown(1_540 * MS, 3);
        measures.ended(5_000 * MS);

        SlotMeasure lamp = SmallPit.slot(measures, GEAR_LAMP);
        assertEquals(2, lamp.latency().count());
        assertEquals(40 * MS, lamp.latency().maxNanos());
        assertEquals(520 * MS, lamp.recoveryNanos());
    }

    @Test
    void panelNeverShownAgainIsStaleToTheEndAndLosesNothingItHadShown() {
        SmallPit.start(measures);
        change(100 * MS, 2, 1, 120 * MS);
        measures.reset(1_000 * MS, LEFT, 1_200 * MS);
        measures.reset(2_000 * MS, LEFT, 2_200 * MS);
        measures.ended(5_000 * MS);

        SlotMeasure lamp = SmallPit.slot(measures, GEAR_LAMP);
        assertEquals(4_000 * MS, lamp.staleNanos(), "since the first restart");
        assertEquals(0, lamp.recoveryNanos());
        assertEquals(0, lamp.lost());
        assertEquals(0, lamp.openNanos());
    }

    @Test
    void blankDisplayOnlyGrowsOlderAndShowsNothingWrong() {
        SmallPit.start(measures);
        measures.reset(100 * MS, RIGHT, 200 * MS);
        measures.stateChanged(150 * MS, ALTITUDE, 2, 900);
        measures.stateSent(150 * MS);
        measures.stateChanged(200 * MS, ALTITUDE, 3, 0);
        measures.stateSent(200 * MS);
        measures.stateSent(500 * MS);
        measures.shown(600 * MS, ALTITUDE_DIGITS, 3);
        measures.ended(1_000 * MS);

        SlotMeasure digits = SmallPit.slot(measures, ALTITUDE_DIGITS);
        assertEquals(600 * MS, digits.agePeakNanos(), "its newest state was that of the start");
        assertEquals(0, digits.displayErrorMax());
    }

    @Test
    void needleKeepsItsPlaceAndItsErrorCountsOn() {
        SmallPit.start(measures);
        measures.reset(100 * MS, LEFT, 200 * MS);
        measures.stateChanged(150 * MS, SPEED, 2, 40);
        measures.stateSent(150 * MS);
        measures.moved(400 * MS, SPEED_NEEDLE, 0, 440 * MS, 40);
        measures.shown(400 * MS, SPEED_NEEDLE, 2);
        measures.ended(1_000 * MS);

        SlotMeasure needle = SmallPit.slot(measures, SPEED_NEEDLE);
        assertEquals(40, needle.displayErrorMax());
        assertEquals(300 * MS, needle.recoveryNanos());
        assertEquals(250 * MS, needle.latency().maxNanos());
    }

    @Test
    void needleOffByAConstantNeverSettlesAndItsErrorIsThatConstant() {
        SmallPit.start(measures);
        measures.stateChanged(100 * MS, SPEED, 2, 40);
        measures.stateSent(100 * MS);
        measures.moved(110 * MS, SPEED_NEEDLE, 0, 150 * MS, 33);
        measures.shown(110 * MS, SPEED_NEEDLE, 2);
        measures.moved(500 * MS, SPEED_NEEDLE, 33, 500 * MS, 26);
        measures.ended(1_000 * MS);

        SlotMeasure needle = SmallPit.slot(measures, SPEED_NEEDLE);
        assertEquals(0, needle.settling().count());
        assertEquals(40, needle.displayErrorMax());
        assertEquals(10 * MS, needle.latency().maxNanos());
    }

    private void change(long atNanos, int serial, long value, long shownNanos) {
        measures.stateChanged(atNanos, GEAR, serial, value);
        measures.stateSent(atNanos);
        shown(shownNanos, serial);
    }

    private void shown(long atNanos, int serial) {
        measures.shown(atNanos, GEAR_LAMP, serial);
    }
}
