package dropline.harness.measure;

import static dropline.harness.measure.SmallPit.GEAR;
import static dropline.harness.measure.SmallPit.GEAR_LAMP;
import static dropline.harness.measure.SmallPit.LEFT;
import static dropline.harness.measure.SmallPit.MS;
import static dropline.harness.measure.SmallPit.RIGHT;
import static dropline.harness.measure.SmallPit.SPEED;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.trace.TraceSink;
import org.junit.jupiter.api.Test;

/** Counts and times on the wire, and the frames around a worst moment, from traces fed by hand. */
class BusMeasureTest {
    private final SegmentMeasures measures = SmallPit.measures();

    @Test
    void transactionsAreCountedOnceHoweverOftenTheyAreTried() {
        request(0, LEFT, 1);
        measures.timedOut(3 * MS, LEFT, 1, 1);
        request(4 * MS, LEFT, 1);
        measures.answered(6 * MS, LEFT, 1, 2, -20);
        request(7 * MS, RIGHT, 2);
        measures.answered(8 * MS, RIGHT, 2, 1, 100);
        request(9 * MS, RIGHT, 3);
        measures.timedOut(11 * MS, RIGHT, 3, 1);
        measures.gaveUp(11 * MS, RIGHT, 3);
        measures.backedOff(11 * MS, RIGHT, 500 * MS);
        measures.ended(20 * MS);

        BusMeasure bus = measures.bus();
        assertEquals(3, bus.asked());
        assertEquals(2, bus.answered());
        assertEquals(1, bus.retried());
        assertEquals(2, bus.timedOut());
        assertEquals(1, bus.gaveUp());
        assertEquals(1, bus.backOffs());
        assertEquals(-20, bus.gapMinNanos());
        assertEquals(40, bus.gapMeanNanos());
        assertEquals(100, bus.gapMaxNanos());
    }

    @Test
    void framesThatOverlapAreCountedOnceInTheTimeInUse() {
        measures.frameStarted(0, TraceSink.CONTROLLER, TraceSink.REQUEST, LEFT, 1, 50);
        measures.frameStarted(2 * MS, LEFT, TraceSink.REPLY, LEFT, 1, 10);
        measures.frameEnded(3 * MS, LEFT, TraceSink.REPLY, LEFT, 1);
        measures.frameEnded(5 * MS, TraceSink.CONTROLLER, TraceSink.REQUEST, LEFT, 1);
        measures.frameStarted(8 * MS, TraceSink.CONTROLLER, TraceSink.REQUEST, LEFT, 2, 500);
        measures.ended(10 * MS);

        assertEquals(7 * MS, measures.bus().busyNanos());
        assertEquals(0.7, measures.bus().utilisation(), 1e-12);
    }

    @Test
    void pollCyclesRunFromStartToStart() {
        measures.cycleStarted(0, 1);
        measures.cycleStarted(10 * MS, 2);
        measures.cycleStarted(40 * MS, 3);
        measures.ended(50 * MS);

        BusMeasure bus = measures.bus();
        assertEquals(2, bus.cycles().count());
        assertEquals(10 * MS, bus.cycles().minNanos());
        assertEquals(20 * MS, bus.cycles().meanNanos());
        assertEquals(30 * MS, bus.cycles().maxNanos());
    }

    @Test
    void theSeriesOfCyclesKeepsItsSumsHoweverLongTheRun() {
        CycleSeries series = new CycleSeries();
        long cycles = 100_000;
        for (long n = 0; n < cycles; n++) {
            series.add(n * 36 * MS, n == 77_777 ? 90 * MS : 36 * MS);
        }

        long count = 0;
        long max = 0;
        for (int i = 0; i < CycleSeries.MOST_POINTS; i++) {
            count += series.count(i);
            max = Math.max(max, series.maxNanos(i));
        }
        assertEquals(cycles, count);
        assertEquals(90 * MS, max);
        assertEquals(36 * MS, series.meanNanos(0));
        assertTrue(series.stretchNanos() * CycleSeries.MOST_POINTS >= cycles * 36 * MS);
    }

    @Test
    void mishapsAreCountedByTheNodeConcerned() {
        for (int n = 1; n <= 3; n++) {
            measures.overrun(n * MS, RIGHT, n);
            measures.timedOut(n * MS, RIGHT, n, 1);
        }
        measures.timedOut(4 * MS, LEFT, 4, 1);
        measures.clash(5 * MS, TraceSink.CONTROLLER, LEFT);
        measures.clash(6 * MS, RIGHT, LEFT);
        measures.timedOut(7 * MS, LEFT, 5, 1);
        measures.timedOut(8 * MS, LEFT, 6, 1);

        Mishaps mishaps = measures.bus().mishaps();
        assertEquals(3, mishaps.overruns(RIGHT));
        assertEquals(RIGHT, mishaps.mostOverrun());
        assertEquals(2, mishaps.clashes(LEFT));
        assertEquals(1, mishaps.clashes(RIGHT));
        assertEquals(LEFT, mishaps.mostClashing());
        assertEquals(1, mishaps.unexplained(LEFT), "three tries, two clashes");
        assertEquals(0, mishaps.unexplained(RIGHT));
        assertEquals(LEFT, mishaps.mostSilent());
    }

    @Test
    void aFrameWithManyValuesIsOneStateFrame() {
        measures.stateChanged(0, GEAR, 1, 1);
        measures.stateChanged(0, SPEED, 1, 1);
        measures.stateSent(0);
        request(MS, LEFT, 1);
        measures.carried(MS, LEFT, GEAR, 1, 1);
        measures.carried(MS, LEFT, SPEED, 1, 1);
        request(2 * MS, LEFT, 2);
        measures.carried(2 * MS, LEFT, GEAR, 1, 2);

        assertEquals(2, measures.bus().stateFrames());
    }

    @Test
    void theWorstMomentKeepsTheFramesAroundIt() {
        SmallPit.start(measures);
        request(80 * MS, RIGHT, 1);
        request(99 * MS, RIGHT, 2);
        measures.stateChanged(100 * MS, GEAR, 2, 1);
        measures.stateSent(100 * MS);
        measures.clash(101 * MS, TraceSink.CONTROLLER, RIGHT);
        request(101 * MS, LEFT, 3);
        measures.overrun(101 * MS, LEFT, 3);
        measures.timedOut(103 * MS, LEFT, 3, 1);
        measures.timedOut(103 * MS, RIGHT, 3, 1);
        request(104 * MS, LEFT, 3);
        measures.applied(106 * MS, GEAR_LAMP, 2, 105 * MS);
        measures.shown(106 * MS, GEAR_LAMP, 2);
        request(107 * MS, RIGHT, 4);

        PanelMeasure lamps = measures.panels().get(0);
        FrameCopy frames = lamps.frames();
        assertNotNull(frames);
        assertEquals(3, frames.count());
        assertEquals(99 * MS, frames.startNanos(0));
        assertFalse(frames.clashed(0));
        assertTrue(frames.clashed(1));
        assertEquals(101 * MS + MS / 2, frames.endNanos(1));
        assertEquals(1, lamps.clashes());
        assertEquals(1, lamps.overruns());
        assertEquals(1, lamps.timeOuts());
        assertEquals(95 * MS, lamps.fromNanos());
    }

    @Test
    void theWorstMomentKeepsTheNearestFramesWhenThereAreTooMany() {
        SmallPit.start(measures);
        measures.stateChanged(100 * MS, GEAR, 2, 1);
        measures.stateSent(100 * MS);
        for (int n = 0; n < 1_000; n++) {
            request((100 + n) * MS, LEFT, n + 1);
        }
        measures.shown(1_100 * MS, GEAR_LAMP, 2);

        PanelMeasure lamps = measures.panels().get(0);
        FrameCopy frames = lamps.frames();
        assertNotNull(frames);
        assertEquals(PanelMeasure.MOST_FRAMES, frames.count());
        assertEquals(1_099 * MS, frames.startNanos(frames.count() - 1));
        assertEquals(900 * MS, frames.startNanos(0));
        assertEquals(900 * MS, lamps.fromNanos());
    }

    private void request(long atNanos, int node, int transaction) {
        measures.frameStarted(atNanos, TraceSink.CONTROLLER, TraceSink.REQUEST, node, transaction, 25);
        measures.frameEnded(atNanos + MS / 2, TraceSink.CONTROLLER, TraceSink.REQUEST, node, transaction);
    }
}
