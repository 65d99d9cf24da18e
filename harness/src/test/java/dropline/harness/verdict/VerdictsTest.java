package dropline.harness.verdict;

import static dropline.harness.measure.SmallPit.BUTTON;
import static dropline.harness.measure.SmallPit.GEAR;
import static dropline.harness.measure.SmallPit.GEAR_LAMP;
import static dropline.harness.measure.SmallPit.LEFT;
import static dropline.harness.measure.SmallPit.MS;
import static dropline.harness.measure.SmallPit.RIGHT;
import static dropline.harness.measure.SmallPit.SPEED;
import static dropline.harness.measure.SmallPit.SPEED_NEEDLE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.harness.measure.SegmentMeasures;
import dropline.harness.measure.SmallPit;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Verdicts and sentences from measures of traces fed by hand. */
final class VerdictsTest extends FedByHand {
    @Test
    void aLatencyEqualToItsLimitPasses() {
        SmallPit.start(measures);
        gear(1_000 * MS, 2, 100 * MS);

        PanelResult lamps = panel(result(), "lamps");
        assertEquals(Outcome.PASS, lamps.verdict().outcome());
        assertEquals(0, lamps.verdict().marginNanos());
    }

    @Test
    void aLatencyOneNanosecondBeyondItsLimitFails() {
        SmallPit.start(measures);
        gear(1_000 * MS, 2, 100 * MS + 1);

        ReplayResult result = result();
        assertEquals(Outcome.FAIL, panel(result, "lamps").verdict().outcome());
        assertEquals(-1, panel(result, "lamps").verdict().marginNanos());
        assertEquals(Outcome.FAIL, result.outcome());
        assertEquals("lamps", result.panels().get(0).panel());
    }

    @Test
    void aPanelWithoutChangesIsUndecidedAndDoesNotCount() {
        SmallPit.start(measures);
        gear(1_000 * MS, 2, 30 * MS);

        ReplayResult result = result();
        assertEquals(Outcome.UNDECIDED, panel(result, "compass").verdict().outcome());
        assertNull(panel(result, "compass").worst());
        assertEquals(Outcome.PASS, result.outcome());
    }

    @Test
    void aRunInWhichNothingChangesIsUndecided() {
        SmallPit.start(measures);

        ReplayResult result = result();
        assertEquals(Outcome.UNDECIDED, result.outcome());
        assertEquals(
                "No panel can be judged: nothing that a panel shows changed in this recording.", result.headline());
    }

    @Test
    void theHeadlineSaysHowFastAndAgainstWhat() {
        SmallPit.start(measures);
        gear(1_000 * MS, 2, 30 * MS);
        gear(2_000 * MS, 3, 61 * MS);

        assertEquals(
                "99 of 100 changes show within 61 ms, the slowest took 61 ms; your limit is 100 ms."
                        + " Both panels that were used keep within their limits.",
                result().headline());
    }

    @Test
    void theHeadlineSaysHowManyMiss() {
        SmallPit.start(measures);
        gear(1_000 * MS, 2, 130 * MS);

        List<String> sentences = result().sentences();
        assertEquals(
                "1 of 2 panels misses its limit. Over all panels 99 of 100 changes show within 130 ms,"
                        + " the slowest took 130 ms; your limit is 100 ms.",
                sentences.get(0));
        assertEquals("lamps: the only change took 130 ms; its limit is 100 ms.", sentences.get(1));
        assertEquals(
                "Nothing can be said about airspeed and compass: nothing changed there in this recording.",
                sentences.get(2));
    }

    @Test
    void aChangeNeverShownFailsItsPanel() {
        SmallPit.start(measures);
        measures.stateChanged(4_000 * MS, SPEED, 2, 50);
        measures.stateSent(4_000 * MS);

        PanelResult airspeed = panel(result(), "airspeed");
        assertEquals(Outcome.FAIL, airspeed.verdict().outcome());
        assertEquals(6_000 * MS, airspeed.verdict().valueNanos());
        assertEquals(1, airspeed.signals().get(0).lost());
    }

    @Test
    void aChangeThatJustHappenedAtTheEndDecidesNothing() {
        SmallPit.start(measures);
        measures.stateChanged(9_990 * MS, SPEED, 2, 50);
        measures.stateSent(9_990 * MS);

        assertEquals(Outcome.UNDECIDED, panel(result(), "airspeed").verdict().outcome());
    }

    @Test
    void meanStagesAddUpToTheMeanToTheNanosecond() {
        SmallPit.start(measures);
        gear(1_000 * MS, 2, 30 * MS + 1);
        gear(2_000 * MS, 3, 31 * MS + 3);
        gear(3_000 * MS, 4, 17 * MS + 7);

        PanelResult lamps = panel(result(), "lamps");
        assertEquals(lamps.updateLatency().meanNanos(), lamps.meanStages().totalNanos());
        assertEquals((78 * MS + 11) / 3, lamps.meanStages().totalNanos());
    }

    @Test
    void theHistogramHoldsEveryLatencyInAtMostFortyBuckets() {
        SmallPit.start(measures);
        for (int n = 0; n < 500; n++) {
            gear((1_000 + 10L * n) * MS, n + 2, (1 + n % 9) * MS);
        }

        List<LatencyHistogram.Bucket> buckets =
                panel(result(), "lamps").histogram().buckets();
        assertEquals(
                500, buckets.stream().mapToLong(LatencyHistogram.Bucket::count).sum());
        assertTrue(buckets.size() <= 40 && buckets.size() > 10, "buckets " + buckets.size());
    }

    @Test
    void aLostPressFailsItsControl() {
        SmallPit.start(measures);
        measures.controlMoved(1_000 * MS, BUTTON, 1, 1);
        measures.controlMoved(2_000 * MS, BUTTON, 2, 1);
        measures.sampled(2_020 * MS, BUTTON, 2);
        measures.told(2_030 * MS, BUTTON, 2);

        ReplayResult result = result();
        ControlResult button = result.controls().get(0);
        assertEquals("test", button.control());
        assertEquals(Outcome.FAIL, button.verdict().outcome());
        assertEquals(1, button.lostSteps());
        assertTrue(result.sentences().contains("1 step of 2 of test never reached the host."));
    }

    @Test
    void aDeadNodesOwnPanelsAreSilentAndTheOthersAreJudgedAgain() {
        SmallPit.start(measures);
        gear(1_000 * MS, 2, 30 * MS);
        SegmentMeasures without = SmallPit.measures();
        without.stateChanged(0, GEAR, 1, 0);
        without.stateSent(0);
        without.stateChanged(1_000 * MS, GEAR, 2, 2);
        without.stateSent(1_000 * MS);
        without.shown(1_140 * MS, GEAR_LAMP, 2);
        measures.ended(10_000 * MS);
        without.ended(10_000 * MS);

        ReplayResult result = verdicts().of(RUN, List.of(measures), List.of(new DeadNode(RIGHT, 0, List.of(without))));

        SingleFailure failure = result.singleFailures().get(0);
        assertEquals("right", failure.node());
        assertEquals(List.of("altimeter"), failure.silentPanels());
        assertEquals(3, failure.panels().size());
        assertEquals("lamps", failure.panels().get(0).panel());
        assertEquals(Outcome.FAIL, failure.outcome());
        assertEquals(140 * MS, failure.panels().get(0).verdict().valueNanos());
        assertEquals(30 * MS, failure.panels().get(0).healthyVerdict().valueNanos());
        assertTrue(
                result.sentences().contains("Panels on other nodes miss their limit when one of these dies: right."));
    }

    @Test
    void theWorstMomentNamesWhoTalked() {
        SmallPit.start(measures);
        measures.stateChanged(1_000 * MS, SPEED, 2, 50);
        measures.stateSent(1_000 * MS);
        measures.frameStarted(1_001 * MS, -1, 0, LEFT, 4, 8);
        measures.frameEnded(1_002 * MS, -1, 0, LEFT, 4);
        measures.frameStarted(1_003 * MS, LEFT, 1, LEFT, 4, 8);
        measures.frameEnded(1_004 * MS, LEFT, 1, LEFT, 4);
        measures.frameStarted(1_005 * MS, -1, 2, -1, 1, 8);
        measures.frameEnded(1_006 * MS, -1, 2, -1, 1);
        measures.moved(1_010 * MS, SPEED_NEEDLE, 0, 1_060 * MS, 50);
        measures.shown(1_010 * MS, SPEED_NEEDLE, 2);

        WorstMoment worst = panel(result(), "airspeed").worst();
        assertNotNull(worst);
        assertEquals(
                List.of(
                        frame("controller", BusFrame.Kind.REQUEST, "left", 4, 1_001),
                        frame("left", BusFrame.Kind.REPLY, "left", 4, 1_003),
                        frame("controller", BusFrame.Kind.BROADCAST, "all", 1, 1_005)),
                worst.frames());
    }

    private static BusFrame frame(String talker, BusFrame.Kind kind, String node, int transaction, long startMs) {
        return new BusFrame(talker, kind, node, transaction, startMs * MS, (startMs + 1) * MS, false);
    }

    private static PanelResult panel(ReplayResult result, String name) {
        return result.panels().stream()
                .filter(panel -> panel.panel().equals(name))
                .findFirst()
                .orElseThrow();
    }
}
