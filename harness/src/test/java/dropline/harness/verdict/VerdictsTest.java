package dropline.harness.verdict;

import static dropline.harness.measure.SmallPit.ALTITUDE;
import static dropline.harness.measure.SmallPit.ALTITUDE_DIGITS;
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

import dropline.bus.pit.Layout;
import dropline.harness.measure.SegmentMeasures;
import dropline.harness.measure.SmallPit;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Verdicts, sentences and advice from measures of traces fed by hand. */
class VerdictsTest {
    private static final Run RUN = new Run("0.1.0", new Recording("by hand", 10_000 * MS), 7, 0xABCL, List.of());

    private final SegmentMeasures measures = SmallPit.measures();

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
    void adviceOnAWaitForTheDeviceNamesItsRefresh() {
        SmallPit.start(measures);
        measures.stateChanged(1_000 * MS, ALTITUDE, 2, 50);
        measures.stateSent(1_000 * MS);
        measures.queued(1_000 * MS, RIGHT, ALTITUDE, 2);
        measures.carried(1_001 * MS, RIGHT, ALTITUDE, 2, 1);
        measures.applied(1_002 * MS, ALTITUDE_DIGITS, 2, 1_002 * MS);
        measures.shown(1_104 * MS, ALTITUDE_DIGITS, 2);

        assertEquals(
                "Of the slowest update's 104 ms, 102 ms went into digits, a digit display that is refreshed"
                        + " every 100 ms and takes 5 ms for it. Refresh it more often.",
                result().advice().get(0).sentence());
    }

    @Test
    void adviceOnABlockedNodeNamesWhatBlocksItLongest() {
        SmallPit.start(measures);
        measures.stateChanged(1_000 * MS, ALTITUDE, 2, 50);
        measures.stateSent(1_000 * MS);
        measures.carried(1_001 * MS, RIGHT, ALTITUDE, 2, 1);
        measures.applied(1_130 * MS, ALTITUDE_DIGITS, 2, 1_002 * MS);
        measures.shown(1_131 * MS, ALTITUDE_DIGITS, 2);

        assertTrue(result().advice().get(0).sentence().contains("the refresh of digits on altimeter, 5 ms"));
    }

    @Test
    void adviceOnALongQueueNamesTheReplyGapsWhereGapsMakeTheRound() {
        SmallPit.start(measures);
        measures.cycleStarted(400 * MS, 1);
        measures.answered(500 * MS, RIGHT, 1, 1, 700_000);
        measures.cycleStarted(600 * MS, 2);
        gear(1_000 * MS, 2, 130 * MS);

        assertEquals(
                "Of the slowest update's 130 ms, 130 ms went into waiting for the frame that brought it, on"
                        + " segment main; a round of polls takes 200 ms on average and 200 ms at most. Of an average"
                        + " round, frames take 0 ns and the gaps between them 200 ms. Replies come 700 us after the"
                        + " request on average and 700 us at most. Make them come sooner, give node left more polls a"
                        + " round, or move panels to another segment.",
                result().advice().get(0).sentence());
    }

    @Test
    void adviceOnALongQueueNamesTheBaudRateWhereFramesMakeTheRound() {
        SmallPit.start(measures);
        measures.cycleStarted(400 * MS, 1);
        measures.cycleStarted(600 * MS, 2);
        measures.frameStarted(1_000 * MS, -1, 0, RIGHT, 1, 8);
        measures.frameEnded(9_000 * MS, -1, 0, RIGHT, 1);
        gear(9_000 * MS, 2, 130 * MS);

        String sentence = result().advice().get(0).sentence();
        assertTrue(
                sentence.contains("frames take 160 ms and the gaps between them 40 ms. Raise the baud rate (500000)"),
                sentence);
    }

    @Test
    void adviceOnTimeOutsNamesTheNodeWhoseBuffersLoseFramesAndWhatBlocksIt() {
        SmallPit.start(measures);
        unanswered(RIGHT, 1);
        unanswered(RIGHT, 2);
        measures.overrun(1_000 * MS, RIGHT, 1);
        measures.overrun(1_000 * MS, RIGHT, 2);

        assertEquals(
                "2 of 2 requests got no reply in time, 0 transactions given up. 2 frames got lost in buffers, all at"
                        + " node right (63 characters in the ring, 2 in the UART): shorten what blocks it (longest: the"
                        + " refresh of digits on altimeter, 5 ms).",
                advice("main"));
    }

    @Test
    void adviceOnTimeOutsNamesWhoTalksIntoOthersFrames() {
        SmallPit.start(measures);
        unanswered(RIGHT, 1);
        measures.clash(1_000 * MS, -1, RIGHT);
        unanswered(LEFT, 2);

        assertEquals(
                "2 of 2 requests got no reply in time, 0 transactions given up. Transmissions touched 1 time, with"
                        + " node right talking: raise the time-out (2 ms) above its slowest reply, shorten what blocks"
                        + " it (longest: the refresh of digits on altimeter, 5 ms), or find who talks out of turn.",
                advice("main"),
                "the request to left is what it talked into");
    }

    @Test
    void adviceOnTimeOutsWithoutAnotherCauseNamesTheNodeThatMayBeSlow() {
        SmallPit.start(measures);
        measures.answered(900 * MS, RIGHT, 1, 1, 700_000);
        unanswered(LEFT, 2);
        unanswered(LEFT, 3);
        unanswered(RIGHT, 4);

        assertEquals(
                "3 of 3 requests got no reply in time, 0 transactions given up. 2 of them went to node left: see"
                        + " whether it answers, and whether it is slower than the time-out (2 ms) allows. The slowest"
                        + " good reply on this segment came 700 us after its request.",
                advice("main"));
    }

    @Test
    void whatOverrunsLeaveOfTheTimeOutsIsPutDownToSlowReplies() {
        SmallPit.start(measures);
        unanswered(RIGHT, 1);
        measures.overrun(1_000 * MS, RIGHT, 1);
        unanswered(LEFT, 2);

        String sentence = advice("main");
        assertTrue(sentence.contains("1 frame got lost in buffers, at node right"), sentence);
        assertTrue(sentence.contains("Of the rest, 1 request went to node left"), sentence);
    }

    private void unanswered(int node, int transaction) {
        measures.frameStarted(1_000 * MS, -1, 0, node, transaction, 8);
        measures.frameEnded(1_001 * MS, -1, 0, node, transaction);
        measures.timedOut(1_003 * MS, node, transaction, 1);
    }

    private String advice(String about) {
        return result().advice().stream()
                .filter(advice -> advice.about().equals(about))
                .findFirst()
                .orElseThrow()
                .sentence();
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

    /** A change of the gear signal, on time on the second lamp, after {@code tookNanos} on the first. */
    private void gear(long atNanos, int serial, long tookNanos) {
        measures.stateChanged(atNanos, GEAR, serial, serial);
        measures.stateSent(atNanos);
        measures.queued(atNanos, LEFT, GEAR, serial);
        measures.shown(atNanos + MS / 2, 4, serial);
        measures.carried(atNanos + tookNanos - 3, LEFT, GEAR, serial, serial);
        measures.applied(atNanos + tookNanos - 1, GEAR_LAMP, serial, atNanos + tookNanos - 2);
        measures.shown(atNanos + tookNanos, GEAR_LAMP, serial);
    }

    private ReplayResult result() {
        measures.ended(10_000 * MS);
        return verdicts().of(RUN, List.of(measures));
    }

    private static Verdicts verdicts() {
        return new Verdicts(SmallPit.pit(), Layout.of(SmallPit.pit()));
    }

    private static PanelResult panel(ReplayResult result, String name) {
        return result.panels().stream()
                .filter(panel -> panel.panel().equals(name))
                .findFirst()
                .orElseThrow();
    }
}
