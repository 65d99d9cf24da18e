package dropline.harness.measure;

import static dropline.harness.measure.SmallPit.ALTITUDE;
import static dropline.harness.measure.SmallPit.ALTITUDE_DIGITS;
import static dropline.harness.measure.SmallPit.GEAR;
import static dropline.harness.measure.SmallPit.GEAR_LAMP;
import static dropline.harness.measure.SmallPit.LEFT;
import static dropline.harness.measure.SmallPit.MS;
import static dropline.harness.measure.SmallPit.RIGHT;
import static dropline.harness.measure.SmallPit.SECOND_GEAR_LAMP;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Update latency as the design defines it: from the oldest change not yet shown, cut into stages at trace events. */
class UpdateLatencyTest {
    private final SegmentMeasures measures = SmallPit.measures();

    @Test
    void stagesAreCutAtTheEventsOfTheTrace() {
        SmallPit.start(measures);

        measures.stateChanged(100 * MS, GEAR, 2, 1);
        measures.stateSent(101 * MS);
        measures.queued(103 * MS, LEFT, GEAR, 2);
        measures.carried(107 * MS, LEFT, GEAR, 2, 9);
        measures.applied(123 * MS, GEAR_LAMP, 2, 115 * MS);
        measures.shown(155 * MS, GEAR_LAMP, 2);

        SlotMeasure lamp = SmallPit.slot(measures, GEAR_LAMP);
        assertEquals(1, lamp.latency().count());
        assertEquals(55 * MS, lamp.latency().maxNanos());
        assertArrayEquals(new long[] {MS, 2 * MS, 4 * MS, 8 * MS, 8 * MS, 32 * MS}, worst(lamp));
    }

    @Test
    void latencyRunsFromTheOldestChangeNotYetShown() {
        SmallPit.start(measures);
        change(10 * MS, 2, 1);
        change(20 * MS, 3, 2);
        change(30 * MS, 4, 3);
        measures.carried(31 * MS, LEFT, GEAR, 3, 1);
        measures.applied(33 * MS, GEAR_LAMP, 3, 32 * MS);
        measures.shown(34 * MS, GEAR_LAMP, 3);
        measures.carried(40 * MS, LEFT, GEAR, 4, 2);
        measures.applied(42 * MS, GEAR_LAMP, 4, 41 * MS);
        measures.shown(45 * MS, GEAR_LAMP, 4);

        SlotMeasure lamp = SmallPit.slot(measures, GEAR_LAMP);
        assertEquals(2, lamp.latency().count());
        assertEquals(24 * MS, lamp.latency().maxNanos(), "serial 3 settles the change of 10 ms too");
        assertEquals(15 * MS, lamp.latency().minNanos(), "then serial 4 is the oldest, of 30 ms");
        assertEquals(15 * MS, lamp.ownDelay().maxNanos());
        assertEquals(14 * MS, lamp.ownDelay().minNanos(), "serial 3 itself was 14 ms on its way");
        assertArrayEquals(new long[] {0, 0, 21 * MS, MS, MS, MS}, worst(lamp));
    }

    @Test
    void changesOfTheFirstStateAreCountedApartAndNotTimed() {
        SmallPit.start(measures);

        SlotMeasure lamp = SmallPit.slot(measures, GEAR_LAMP);
        assertEquals(1, lamp.initial());
        assertEquals(0, lamp.changes());
        assertEquals(0, lamp.latency().count());
    }

    @Test
    void aChangeThatWaitsBehindTheFirstStateIsTimedFromItself() {
        measures.stateChanged(0, GEAR, 1, 5);
        measures.stateSent(0);
        change(40 * MS, 2, 6);
        measures.shown(90 * MS, GEAR_LAMP, 2);

        assertEquals(50 * MS, SmallPit.slot(measures, GEAR_LAMP).latency().maxNanos());
    }

    @Test
    void aValueSentAgainUnchangedIsNoNewChange() {
        SmallPit.start(measures);
        change(10 * MS, 2, 1);
        deliver(12 * MS, 2);
        measures.carried(500 * MS, LEFT, GEAR, 2, 7);
        measures.applied(502 * MS, GEAR_LAMP, 2, 501 * MS);
        measures.shown(502 * MS, GEAR_LAMP, 2);

        assertEquals(1, SmallPit.slot(measures, GEAR_LAMP).latency().count());
    }

    @Test
    void theLastFrameBeforeItWasHeardIsTheOneThatDelivered() {
        SmallPit.start(measures);
        change(10 * MS, 2, 1);
        measures.carried(11 * MS, LEFT, GEAR, 2, 3);
        measures.carried(20 * MS, LEFT, GEAR, 2, 3);
        measures.carried(30 * MS, LEFT, GEAR, 2, 3);
        measures.applied(31 * MS, GEAR_LAMP, 2, 22 * MS);
        measures.shown(31 * MS, GEAR_LAMP, 2);

        assertArrayEquals(new long[] {0, 0, 10 * MS, 2 * MS, 9 * MS, 0}, worst(SmallPit.slot(measures, GEAR_LAMP)));
        assertEquals(3, measures.panels().get(0).timesCarried());
    }

    @Test
    void aPulseUndoneBeforeItWasSentIsMissedAndNotWaitedFor() {
        SmallPit.start(measures);
        measures.stateChanged(10 * MS, GEAR, 2, 1);
        measures.stateChanged(15 * MS, GEAR, 3, 0);
        measures.stateSent(20 * MS);
        change(500 * MS, 4, 1);
        deliver(502 * MS, 4);
        measures.ended(5_000 * MS);

        SlotMeasure lamp = SmallPit.slot(measures, GEAR_LAMP);
        assertEquals(1, lamp.missed());
        assertEquals(2 * MS, lamp.latency().maxNanos());
        assertEquals(3, lamp.changes());
        assertEquals(0, lamp.lost());
    }

    @Test
    void aPulseUndoneAfterAnUnshownChangeDoesNotTakeItsPlace() {
        SmallPit.start(measures);
        change(10 * MS, 2, 1);
        measures.stateChanged(21 * MS, GEAR, 3, 7);
        measures.stateChanged(22 * MS, GEAR, 4, 1);
        measures.stateSent(23 * MS);
        deliver(60 * MS, 2);
        measures.ended(5_000 * MS);

        SlotMeasure lamp = SmallPit.slot(measures, GEAR_LAMP);
        assertEquals(50 * MS, lamp.latency().maxNanos());
        assertEquals(0, lamp.openNanos());
        assertEquals(0, lamp.lost());
    }

    @Test
    void whatWasNeverShownIsLostOnlyWhenOldAndNotOvertaken() {
        SmallPit.start(measures);
        change(1_000 * MS, 2, 1);
        change(2_000 * MS, 3, 2);
        deliver(2_001 * MS, 3);
        change(3_000 * MS, 4, 3);
        change(3_999 * MS, 5, 4);
        change(4_001 * MS, 6, 5);
        measures.ended(5_000 * MS);

        SlotMeasure lamp = SmallPit.slot(measures, GEAR_LAMP);
        assertEquals(2, lamp.lost(), "serials 4 and 5; 2 was overtaken, 6 is younger than a second");
        assertEquals(2_000 * MS, lamp.openNanos());
    }

    @Test
    void everyChangeOfADeadNodeIsLost() {
        SmallPit.start(measures);
        int last = 3 * SignalLog.CAPACITY;
        for (int serial = 2; serial <= last; serial++) {
            change(serial * MS, serial, serial % 7);
        }
        measures.ended(10_000 * MS);

        SlotMeasure lamp = SmallPit.slot(measures, GEAR_LAMP);
        assertEquals(last - 1, lamp.lost());
        assertEquals(9_998 * MS, lamp.openNanos());
    }

    @Test
    void oneSignalIsTimedOnEachNodeThatShowsIt() {
        SmallPit.start(measures);
        measures.stateChanged(10 * MS, GEAR, 2, 1);
        measures.stateSent(10 * MS);
        measures.queued(11 * MS, LEFT, GEAR, 2);
        measures.queued(13 * MS, RIGHT, GEAR, 2);
        measures.coalesced(13 * MS, RIGHT, GEAR, 1);
        measures.carried(14 * MS, LEFT, GEAR, 2, 1);
        measures.carried(17 * MS, RIGHT, GEAR, 2, 2);
        measures.applied(20 * MS, GEAR_LAMP, 2, 15 * MS);
        measures.shown(20 * MS, GEAR_LAMP, 2);
        measures.applied(30 * MS, SECOND_GEAR_LAMP, 2, 18 * MS);
        measures.shown(30 * MS, SECOND_GEAR_LAMP, 2);

        SlotMeasure left = SmallPit.slot(measures, GEAR_LAMP);
        SlotMeasure right = SmallPit.slot(measures, SECOND_GEAR_LAMP);
        assertArrayEquals(new long[] {0, MS, 3 * MS, MS, 5 * MS, 0}, worst(left));
        assertArrayEquals(new long[] {0, 3 * MS, 4 * MS, MS, 12 * MS, 0}, worst(right));
        assertEquals(0, left.coalesced());
        assertEquals(1, right.coalesced());
    }

    @Test
    void aCutMissingFromTheTraceGivesItsTimeToTheNextStage() {
        SmallPit.start(measures);
        measures.stateChanged(10 * MS, ALTITUDE, 2, 1);
        measures.stateSent(12 * MS);
        measures.applied(40 * MS, ALTITUDE_DIGITS, 2, 30 * MS);
        measures.shown(50 * MS, ALTITUDE_DIGITS, 2);

        assertArrayEquals(
                new long[] {2 * MS, 0, 0, 18 * MS, 10 * MS, 10 * MS}, worst(SmallPit.slot(measures, ALTITUDE_DIGITS)));
    }

    private void change(long atNanos, int serial, long value) {
        measures.stateChanged(atNanos, GEAR, serial, value);
        measures.stateSent(atNanos);
        measures.queued(atNanos, LEFT, GEAR, serial);
        measures.queued(atNanos, RIGHT, GEAR, serial);
    }

    private void deliver(long atNanos, int serial) {
        measures.carried(atNanos - 10, LEFT, GEAR, serial, 1);
        measures.applied(atNanos, GEAR_LAMP, serial, atNanos - 5);
        measures.shown(atNanos, GEAR_LAMP, serial);
    }

    private static long[] worst(SlotMeasure slot) {
        return IntStream.range(0, SlotMeasure.STAGES)
                .mapToLong(slot::worstStageNanos)
                .toArray();
    }
}
