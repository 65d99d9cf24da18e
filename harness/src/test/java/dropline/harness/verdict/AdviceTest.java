package dropline.harness.verdict;

import static dropline.harness.measure.SmallPit.ALTITUDE;
import static dropline.harness.measure.SmallPit.ALTITUDE_DIGITS;
import static dropline.harness.measure.SmallPit.LEFT;
import static dropline.harness.measure.SmallPit.MS;
import static dropline.harness.measure.SmallPit.RIGHT;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.harness.measure.SmallPit;
import org.junit.jupiter.api.Test;

/** What a replay advises, from measures of traces fed by hand. */
final class AdviceTest extends FedByHand {
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
}
