package dropline.harness.measure;

import static dropline.harness.measure.SmallPit.AXIS;
import static dropline.harness.measure.SmallPit.BUTTON;
import static dropline.harness.measure.SmallPit.ENCODER;
import static dropline.harness.measure.SmallPit.MS;
import static dropline.harness.measure.SmallPit.TOGGLE;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Control latency and lost steps, by the design's rule that controls travel as state. */
class ControlLatencyTest {
    private final SegmentMeasures measures = SmallPit.measures();

    @Test
    void latencyRunsFromTheOldestMoveTheHostDidNotKnow() {
        measures.controlMoved(10 * MS, ENCODER, 1, 1);
        measures.sampled(10 * MS, ENCODER, 1);
        measures.controlMoved(12 * MS, ENCODER, 2, 2);
        measures.sampled(12 * MS, ENCODER, 2);
        measures.controlMoved(14 * MS, ENCODER, 3, 3);
        measures.told(15 * MS, ENCODER, 2);
        measures.told(30 * MS, ENCODER, 3);
        measures.ended(5_000 * MS);

        ControlMeasure encoder = measures.controls().get(ENCODER);
        assertEquals(3, encoder.moves());
        assertEquals(2, encoder.latency().count());
        assertEquals(16 * MS, encoder.latency().maxNanos());
        assertEquals(5 * MS, encoder.latency().minNanos());
        assertEquals(0, encoder.lostSteps());
    }

    @Test
    void aPressItsNodeLetPassIsALostStep() {
        measures.controlMoved(10 * MS, BUTTON, 1, 1);
        measures.controlMoved(500 * MS, BUTTON, 2, 1);
        measures.sampled(520 * MS, BUTTON, 2);
        measures.told(530 * MS, BUTTON, 2);
        measures.ended(5_000 * MS);

        ControlMeasure button = measures.controls().get(BUTTON);
        assertEquals(1, button.lostSteps());
        assertEquals(1, button.latency().count());
        assertEquals(30 * MS, button.latency().maxNanos());
        assertEquals(0, button.openNanos());
    }

    @Test
    void stepsTheHostWasNeverToldOfAreLostOnceOld() {
        measures.controlMoved(1_000 * MS, ENCODER, 1, 1);
        measures.told(1_010 * MS, ENCODER, 1);
        measures.controlMoved(2_000 * MS, ENCODER, 2, 2);
        measures.controlMoved(3_000 * MS, ENCODER, 3, 3);
        measures.controlMoved(4_500 * MS, ENCODER, 4, 4);
        measures.ended(5_000 * MS);

        assertEquals(2, measures.controls().get(ENCODER).lostSteps());
        assertEquals(3_000 * MS, measures.controls().get(ENCODER).openNanos());
    }

    @Test
    void everyStepOnADeadNodeIsLost() {
        for (int serial = 1; serial <= 1_000; serial++) {
            measures.controlMoved(serial * MS, ENCODER, serial, serial);
        }
        measures.ended(10_000 * MS);

        assertEquals(1_000, measures.controls().get(ENCODER).lostSteps());
    }

    @Test
    void aToggleBackWhereItsNodeBelievesItNeedsNoTelling() {
        measures.controlMoved(10 * MS, TOGGLE, 1, 1);
        measures.sampled(30 * MS, TOGGLE, 1);
        measures.told(40 * MS, TOGGLE, 1);
        measures.controlMoved(100 * MS, TOGGLE, 2, 0);
        measures.controlMoved(105 * MS, TOGGLE, 3, 1);
        measures.controlMoved(900 * MS, TOGGLE, 4, 0);
        measures.sampled(920 * MS, TOGGLE, 4);
        measures.told(925 * MS, TOGGLE, 4);
        measures.ended(5_000 * MS);

        ControlMeasure toggle = measures.controls().get(TOGGLE);
        assertEquals(2, toggle.latency().count());
        assertEquals(30 * MS, toggle.latency().maxNanos());
        assertEquals(0, toggle.lostSteps());
    }

    @Test
    void anAxisInsideItsDeadBandNeedsNoTelling() {
        measures.controlMoved(10 * MS, AXIS, 1, 100);
        measures.sampled(10 * MS, AXIS, 1);
        measures.told(20 * MS, AXIS, 1);
        measures.controlMoved(30 * MS, AXIS, 2, 102);
        measures.controlMoved(2_000 * MS, AXIS, 3, 103);
        measures.sampled(2_000 * MS, AXIS, 3);
        measures.told(2_008 * MS, AXIS, 3);
        measures.ended(5_000 * MS);

        ControlMeasure axis = measures.controls().get(AXIS);
        assertEquals(10 * MS, axis.latency().maxNanos());
        assertEquals(0, axis.lostSteps());
    }

    @Test
    void aStepItsNodeDidNotNoticeIsLostAndTheNextIsTimedFromItself() {
        measures.controlMoved(10 * MS, ENCODER, 1, 1);
        measures.controlMoved(500 * MS, ENCODER, 2, 2);
        measures.sampled(500 * MS, ENCODER, 2);
        measures.told(505 * MS, ENCODER, 2);
        measures.ended(5_000 * MS);

        ControlMeasure encoder = measures.controls().get(ENCODER);
        assertEquals(1, encoder.lostSteps());
        assertEquals(1, encoder.latency().count());
        assertEquals(5 * MS, encoder.latency().maxNanos());
        assertEquals(0, encoder.openNanos());
        assertEquals(0, encoder.spurious());
    }

    @Test
    void changesNobodyMadeAreSpuriousAndLaterMovesAreTimedAsEver() {
        measures.controlMoved(10 * MS, TOGGLE, 1, 1);
        measures.sampled(30 * MS, TOGGLE, 1);
        measures.told(40 * MS, TOGGLE, 1);
        measures.sampled(100 * MS, TOGGLE, 2);
        measures.told(105 * MS, TOGGLE, 2);
        measures.sampled(126 * MS, TOGGLE, 3);
        measures.told(130 * MS, TOGGLE, 3);
        measures.controlMoved(200 * MS, TOGGLE, 4, 0);
        measures.sampled(220 * MS, TOGGLE, 4);
        measures.told(222 * MS, TOGGLE, 4);
        measures.ended(5_000 * MS);

        ControlMeasure toggle = measures.controls().get(TOGGLE);
        assertEquals(2, toggle.spurious());
        assertEquals(2, toggle.moves());
        assertEquals(2, toggle.latency().count());
        assertEquals(30 * MS, toggle.latency().maxNanos());
        assertEquals(22 * MS, toggle.latency().minNanos());
        assertEquals(0, toggle.lostSteps());
        assertEquals(0, toggle.openNanos());
    }

    @Test
    void afterASpuriousChangeAMoveBackIsTimedThoughItsValueWasBelievedBefore() {
        measures.controlMoved(10 * MS, TOGGLE, 1, 1);
        measures.sampled(30 * MS, TOGGLE, 1);
        measures.told(40 * MS, TOGGLE, 1);
        measures.sampled(100 * MS, TOGGLE, 2);
        measures.controlMoved(110 * MS, TOGGLE, 3, 1);
        measures.sampled(130 * MS, TOGGLE, 3);
        measures.told(150 * MS, TOGGLE, 3);
        measures.ended(5_000 * MS);

        assertEquals(2, measures.controls().get(TOGGLE).latency().count());
        assertEquals(40 * MS, measures.controls().get(TOGGLE).latency().maxNanos());
    }

    @Test
    void aSpuriousPressAfterOneTooShortLosesThatOneOnly() {
        measures.controlMoved(10 * MS, BUTTON, 1, 1);
        measures.sampled(400 * MS, BUTTON, 2);
        measures.told(410 * MS, BUTTON, 2);
        measures.controlMoved(500 * MS, BUTTON, 3, 1);
        measures.sampled(520 * MS, BUTTON, 3);
        measures.told(530 * MS, BUTTON, 3);
        measures.ended(5_000 * MS);

        ControlMeasure button = measures.controls().get(BUTTON);
        assertEquals(1, button.lostSteps());
        assertEquals(1, button.spurious());
        assertEquals(1, button.latency().count());
        assertEquals(30 * MS, button.latency().maxNanos());
    }

    @Test
    void moveAtTheInstantOfASpuriousChangeIsNotTakenForIt() {
        measures.controlMoved(10 * MS, ENCODER, 2, 1);
        measures.sampled(10 * MS, ENCODER, 1);
        measures.sampled(10 * MS, ENCODER, 2);
        measures.told(15 * MS, ENCODER, 2);
        measures.ended(5_000 * MS);

        assertEquals(1, measures.controls().get(ENCODER).spurious());
        assertEquals(1, measures.controls().get(ENCODER).latency().count());
        assertEquals(5 * MS, measures.controls().get(ENCODER).latency().maxNanos());
    }

    @Test
    void thousandsOfSpuriousChangesBetweenTwoMovesLoseNeither() {
        measures.controlMoved(10 * MS, AXIS, 1, 100);
        measures.sampled(10 * MS, AXIS, 1);
        for (int serial = 2; serial <= 5_000; serial++) {
            measures.sampled(serial * MS + 10 * MS, AXIS, serial);
        }
        measures.told(5_020 * MS, AXIS, 5_000);
        measures.controlMoved(6_000 * MS, AXIS, 5_001, 200);
        measures.sampled(6_000 * MS, AXIS, 5_001);
        measures.told(6_007 * MS, AXIS, 5_001);
        measures.ended(10_000 * MS);

        ControlMeasure axis = measures.controls().get(AXIS);
        assertEquals(4_999, axis.spurious());
        assertEquals(2, axis.latency().count());
        assertEquals(5_010 * MS, axis.latency().maxNanos());
        assertEquals(7 * MS, axis.latency().minNanos());
        assertEquals(0, axis.lostSteps());
    }
}
