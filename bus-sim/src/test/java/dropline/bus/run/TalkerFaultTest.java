package dropline.bus.run;

import static dropline.bus.Pits.MICRO;
import static dropline.bus.Pits.MILLI;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.pit.Profile;
import dropline.protocol.frames.DroplineFrames;
import org.junit.jupiter.api.Test;

/** What each fault of a driver or of an address does: nodes that talk at the wrong time, or out of turn. */
final class TalkerFaultTest extends FaultyBus {
    @Test
    void healthyBusHasNothingWrong() {
        run(DroplineFrames.create());

        assertEquals(0, count("received-wrong") + count("timed-out") + count("clash") + count("phantom"));
        assertTrue(count("answered") > 300, () -> "answered=" + count("answered"));
    }

    @Test
    void driverReleasedHalfABitEarlyCutsNothingAsTheStopBitIsAOneAnyway() {
        run(DroplineFrames.create(), node(FaultKind.DRIVER_RELEASED_EARLY, 1, 1, BIT / 2));

        assertEquals(0, count("received-wrong"));
    }

    @Test
    void driverReleasedNineAndAHalfBitsEarlyCutsTheLastByteOfThatNodeOnly() {
        run(DroplineFrames.create(), node(FaultKind.DRIVER_RELEASED_EARLY, 1, 1, 19 * BIT / 2));

        // The last byte is the delimiter, a zero: all of its bits are lost to the bias.
        assertTrue(count("received-wrong") > 30, () -> "wrong=" + count("received-wrong"));
        assertEquals(0, answeredBy(1));
        assertTrue(answeredBy(0) > 30 && answeredBy(2) > 30);
    }

    @Test
    void driverReleasedLateDestroysWhateverFrameFollows() {
        run(DroplineFrames.create(), node(FaultKind.DRIVER_RELEASED_LATE, 1, 1, 50 * MICRO + 12 * BIT));

        assertTrue(count("clash") > 30, () -> "clash=" + count("clash"));
        assertTrue(wrongAt(2) > 20, () -> "node 2 is polled after node 1: wrong=" + wrongAt(2));
        assertTrue(lines.only("received-wrong").stream().allMatch(line -> line.contains(" -1 ")), "never a reply");
        assertTrue(answeredBy(1) > 30);
    }

    @Test
    void driverEnabledLateLosesTheFirstByte() {
        run(DroplineFrames.create(), node(FaultKind.DRIVER_ENABLED_LATE, 1, 1, 3 * BIT / 2));

        assertEquals(0, answeredBy(1));
        assertTrue(count("received-wrong") > 10);
        assertTrue(answeredBy(0) > 30);
    }

    @Test
    void replyThatComesWhileTheControllerStillDrivesIsNotHeard() {
        run(DroplineFrames.create(), node(FaultKind.REPLY_TOO_SOON, 1, 1, 0));

        assertTrue(count("clash") > 10);
        assertTrue(answeredBy(1) < answeredBy(0) / 2, () -> "answered=" + answeredBy(1));
    }

    @Test
    void twoNodesWithOneAddressDestroyEachOther() {
        run(DroplineFrames.create(), new Fault(FaultKind.DUPLICATE_ADDRESS, 0, 1, -1, 2, 0, Fault.TO_THE_END, 0, 0));

        assertTrue(count("clash") > 10);
        assertEquals(0, answeredBy(1), "nobody answers to the address that was given up");
        assertTrue(answeredBy(2) < answeredBy(0) / 2, () -> "answered=" + answeredBy(2));
    }

    @Test
    void slowerOneOfTwoWithOneAddressIsMaskedWhereItComesAfterTheFirstIsDone() {
        Profile slow = profile(700 * MICRO);
        run(
                pit(DroplineFrames.create(), slow, 5 * MILLI),
                new Fault(FaultKind.DUPLICATE_ADDRESS, 0, 1, -1, 2, 0, Fault.TO_THE_END, 0, 0));

        assertTrue(answeredBy(2) >= 15, () -> "the faster one gets through: answered=" + answeredBy(2));
    }

    @Test
    void stuckDriverSpoilsWhateverOthersSend() {
        run(DroplineFrames.create(), node(FaultKind.STUCK_DRIVER, 1, 0, 0));

        assertEquals(0, answeredBy(0) + answeredBy(2));
    }

    @Test
    void babblingNodeSpoilsSomeFrames() {
        run(DroplineFrames.create(), node(FaultKind.BABBLING_NODE, 1, 200, 10));

        assertTrue(lines.only("started").stream().anyMatch(line -> line.contains(" started 1 3 1 0 10")));
        assertTrue(count("clash") > 5 && count("received-wrong") > 5);
        assertTrue(answeredBy(0) > 30);
    }

    @Test
    void nodeThatAnswersForAnotherSpoilsItsReplies() {
        run(DroplineFrames.create(), new Fault(FaultKind.ANSWERS_ANOTHER, 0, 1, -1, 2, 0, Fault.TO_THE_END, 1, 0));

        assertTrue(answeredBy(1) > 30, "it still answers for itself");
        assertTrue(answeredBy(2) < answeredBy(0) / 2, () -> "answered=" + answeredBy(2));
    }
}
