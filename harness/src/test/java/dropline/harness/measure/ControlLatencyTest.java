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
}
