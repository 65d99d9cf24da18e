package dropline.bus.run;

import static dropline.bus.Pits.MILLI;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.fault.FaultKind;
import dropline.protocol.frames.DroplineFrames;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What each fault of a board does: nodes that do not hear, do not answer, or forget. */
final class BoardFaultTest extends FaultyBus {
    @Test
    void eavesdropperMissesTheRequestThatFollowsAnothersReplyAndAnswersTheRetry() {
        run(DroplineFrames.create(), node(FaultKind.EAVESDROPPER, 1, 1, 0));

        assertTrue(count("timed-out") > 30);
        assertEquals(0, count("gave-up"));
        assertTrue(lines.only("answered").stream()
                        .filter(line -> line.split(" ")[2].equals("1"))
                        .filter(line -> line.split(" ")[4].equals("2"))
                        .count()
                > 30);
    }

    @Test
    void wrongBaudRateAndSwappedWiresAndDeadNodesAreSilentForTheController() {
        for (FaultKind kind :
                List.of(FaultKind.WRONG_BAUD, FaultKind.SWAPPED_PAIR, FaultKind.DEAD_NODE, FaultKind.BACK_FEED)) {
            run(DroplineFrames.create(), node(kind, 1, 0, kind == FaultKind.WRONG_BAUD ? 125_000 : 0));

            assertEquals(0, answeredBy(1), kind.word());
            assertTrue(answeredBy(0) > 30 && count("timed-out") > 10, kind.word());
        }
    }

    @Test
    void clockOffByOnePercentIsUnderstoodAndBySixIsNot() {
        run(DroplineFrames.create(), node(FaultKind.CLOCK_OFF, 1, 0, 10_000));
        assertEquals(0, count("timed-out"));

        run(DroplineFrames.create(), node(FaultKind.CLOCK_OFF, 1, 0, -60_000));
        assertEquals(0, answeredBy(1));
        assertTrue(wrongAt(1) > 10);
    }

    @Test
    void blackoutLosesWhatDoesNotFitTheHardwareBuffer() {
        run(DroplineFrames.create(), node(FaultKind.BLACKOUT, 1, 0, 40 * 10 * BIT));

        assertEquals(
                1,
                lines.only("overrun").stream()
                        .filter(line -> line.contains(" overrun 1 "))
                        .count());
    }

    @Test
    void loopStallDelaysRepliesUntilItIsOver() {
        run(DroplineFrames.create(), node(FaultKind.LOOP_STALL, 1, 0, 100 * MILLI));

        assertTrue(count("timed-out") > 3);
        assertTrue(answeredBy(1) > 20);
    }

    @Test
    void smallRingLosesLongFramesOnly() {
        run(DroplineFrames.create(), node(FaultKind.RING_OVERRUN, 1, 0, 8));

        assertTrue(count("overrun") > 10);
        assertEquals(0, count("timed-out"), "polls are 7 characters long");
    }

    @Test
    void resetNodeIsSilentUntilItHasStartedAndShowsAgainOnceItIsSentAgain() {
        run(DroplineFrames.create(), at(node(FaultKind.RESET, 1, 0, 100 * MILLI), 100 * MILLI));

        assertEquals(List.of("100000000 reset 1 200000000"), lines.only("reset"));
        assertTrue(lines.only("answered").stream()
                .filter(line -> line.split(" ")[2].equals("1"))
                .map(line -> Long.parseLong(line.split(" ")[0]))
                .noneMatch(time -> time > 102 * MILLI && time < 200 * MILLI));
        assertTrue(lines.only("node-status").stream().anyMatch(line -> line.contains(" node-status 1 1 ")));
        List<Long> shown = lines.only("shown").stream()
                .filter(line -> line.split(" ")[2].equals("1"))
                .map(line -> Long.parseLong(line.split(" ")[0]))
                .filter(time -> time > 102 * MILLI)
                .toList();
        assertTrue(!shown.isEmpty() && shown.get(0) > 200 * MILLI, shown::toString);
    }

    @Test
    void brownOutRestartsEveryNode() {
        run(DroplineFrames.create(), at(segment(FaultKind.BROWN_OUT, 0, 50 * MILLI), 100 * MILLI));

        assertEquals(3, count("reset"));
    }

    @Test
    void liftedCommonWireLosesFramesOfOneNode() {
        run(DroplineFrames.create(), node(FaultKind.COMMON_WIRE_LIFTED, 1, 0.3, 0));

        assertTrue(wrongAt(1) > 10);
        assertEquals(0, wrongAt(0) + wrongAt(2) + count("clash"));
    }
}
