package dropline.harness.measure;

import static dropline.harness.measure.SmallPit.COMPASS;
import static dropline.harness.measure.SmallPit.GEAR;
import static dropline.harness.measure.SmallPit.GEAR_LAMP;
import static dropline.harness.measure.SmallPit.HEADING;
import static dropline.harness.measure.SmallPit.MS;
import static dropline.harness.measure.SmallPit.SPEED;
import static dropline.harness.measure.SmallPit.SPEED_NEEDLE;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Display error and settling, worked out by hand from steps and straight motions. */
class MovingIndicatorTest {
    private static final double TINY = 1e-9;

    private final SegmentMeasures measures = SmallPit.measures();

    @Test
    void aLampIsWrongFromTheChangeUntilItIsShown() {
        SmallPit.start(measures);
        change(11 * MS, GEAR, 2, 3);
        measures.shown(21 * MS, GEAR_LAMP, 2);
        measures.ended(101 * MS);

        SlotMeasure lamp = SmallPit.slot(measures, GEAR_LAMP);
        assertEquals(3, lamp.displayErrorMax(), TINY);
        assertEquals(Math.sqrt(9 * 10 / 100.0), lamp.displayErrorRms(), TINY);
    }

    @Test
    void theErrorOfANeedleShrinksAlongItsMotion() {
        SmallPit.start(measures);
        change(11 * MS, SPEED, 2, 60);
        measures.moved(21 * MS, SPEED_NEEDLE, 0, 81 * MS, 60);
        measures.shown(21 * MS, SPEED_NEEDLE, 2);
        measures.ended(101 * MS);

        SlotMeasure needle = SmallPit.slot(measures, SPEED_NEEDLE);
        double steady = 60 * 60 * 10.0;
        double moving = 60 * 60 * 60.0 / 3;
        assertEquals(60, needle.displayErrorMax(), TINY);
        assertEquals(Math.sqrt((steady + moving) / 100), needle.displayErrorRms(), TINY);
        assertEquals(70 * MS, needle.settling().maxNanos());
        assertEquals(10 * MS, needle.latency().maxNanos());
    }

    @Test
    void aMotionCutShortSettlesNothing() {
        SmallPit.start(measures);
        change(10 * MS, SPEED, 2, 60);
        measures.moved(20 * MS, SPEED_NEEDLE, 0, 80 * MS, 60);
        measures.shown(20 * MS, SPEED_NEEDLE, 2);
        change(40 * MS, SPEED, 3, 0);
        measures.moved(50 * MS, SPEED_NEEDLE, 30, 80 * MS, 0);
        measures.shown(50 * MS, SPEED_NEEDLE, 3);
        measures.ended(200 * MS);

        SlotMeasure needle = SmallPit.slot(measures, SPEED_NEEDLE);
        assertEquals(1, needle.settling().count());
        assertEquals(70 * MS, needle.settling().maxNanos(), "from the change at 10 ms to rest at 80 ms");
    }

    @Test
    void aMotionThatEndsAsTheNextBeginsHasSettled() {
        SmallPit.start(measures);
        change(10 * MS, SPEED, 2, 60);
        measures.moved(20 * MS, SPEED_NEEDLE, 0, 80 * MS, 60);
        measures.shown(20 * MS, SPEED_NEEDLE, 2);
        change(79 * MS, SPEED, 3, 70);
        measures.moved(80 * MS, SPEED_NEEDLE, 60, 90 * MS, 70);
        measures.shown(80 * MS, SPEED_NEEDLE, 3);
        measures.ended(200 * MS);

        SlotMeasure needle = SmallPit.slot(measures, SPEED_NEEDLE);
        assertEquals(2, needle.settling().count());
        assertEquals(11 * MS, needle.settling().minNanos());
    }

    @Test
    void aHeadingGoesTheShortWayRound() {
        SmallPit.start(measures);
        change(11 * MS, HEADING, 2, 350);
        measures.moved(11 * MS, COMPASS, 0, 21 * MS, -10);
        measures.shown(11 * MS, COMPASS, 2);
        measures.ended(101 * MS);

        SlotMeasure card = SmallPit.slot(measures, COMPASS);
        assertEquals(10, card.displayErrorMax(), TINY);
        assertEquals(Math.sqrt(100 * 10.0 / 3 / 100), card.displayErrorRms(), TINY);
        assertEquals(10 * MS, card.settling().maxNanos());
    }

    @Test
    void anErrorThatPassesHalfATurnComesBackFromTheOtherSide() {
        SmallPit.start(measures);
        change(11 * MS, HEADING, 2, 100);
        measures.moved(11 * MS, COMPASS, 0, 111 * MS, 100);
        measures.shown(11 * MS, COMPASS, 2);
        change(61 * MS, HEADING, 3, 220);
        measures.ended(101 * MS);

        // Error 100 to 50 in 50 ms; then true 220, needle 50 to 90: 170 to 130 in 40 ms; 10 ms without any before.
        SlotMeasure card = SmallPit.slot(measures, COMPASS);
        double first = 50 * (100.0 * 100 + 100 * 50 + 50 * 50) / 3;
        double second = 40 * (170.0 * 170 + 170 * 130 + 130 * 130) / 3;
        assertEquals(170, card.displayErrorMax(), TINY);
        assertEquals(Math.sqrt((first + second) / 100), card.displayErrorRms(), TINY);
    }

    @Test
    void aNeedleMovingAwayThroughHalfATurnIsNeverMoreThanHalfATurnOff() {
        SmallPit.start(measures);
        change(11 * MS, HEADING, 2, 100);
        measures.moved(11 * MS, COMPASS, 0, 111 * MS, 100);
        measures.shown(11 * MS, COMPASS, 2);
        change(21 * MS, HEADING, 3, 200);
        measures.ended(61 * MS);

        // From 21 ms on: true 200, needle 10 to 50: 190 is -170 the short way; to -180 in 10 ms, then 180 to 150.
        SlotMeasure card = SmallPit.slot(measures, COMPASS);
        double first = 10 * (100.0 * 100 + 100 * 90 + 90 * 90) / 3;
        double away = 10 * (170.0 * 170 + 170 * 180 + 180 * 180) / 3;
        double back = 30 * (180.0 * 180 + 180 * 150 + 150 * 150) / 3;
        assertEquals(180, card.displayErrorMax(), TINY);
        assertEquals(Math.sqrt((first + away + back) / 60), card.displayErrorRms(), 1e-6);
    }

    @Test
    void findingItsPlaceAtTheStartIsNoError() {
        measures.stateChanged(0, SPEED, 1, 500);
        measures.stateSent(0);
        measures.moved(MS, SPEED_NEEDLE, 0, 501 * MS, 500);
        measures.shown(MS, SPEED_NEEDLE, 1);
        measures.ended(1_000 * MS);

        assertEquals(0, SmallPit.slot(measures, SPEED_NEEDLE).displayErrorMax(), TINY);
    }

    private void change(long atNanos, int signal, int serial, long value) {
        measures.stateChanged(atNanos, signal, serial, value);
        measures.stateSent(atNanos);
    }
}
