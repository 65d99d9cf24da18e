package dropline.bus.run;

import static dropline.bus.Pits.MICRO;
import static dropline.bus.Pits.MILLI;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.Pits;
import dropline.bus.chance.Distribution;
import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.host.StateBlock;
import dropline.bus.pit.Adapter;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Segment;
import dropline.bus.trace.TraceLines;
import dropline.protocol.CharacterFormat;
import dropline.protocol.Protocol;
import dropline.protocol.frames.DroplineFrames;
import dropline.protocol.modbus.ModbusRtu;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What each fault of the wire and of the nodes does, on a bus of three nodes at 250 kbaud (a bit is 4 us). */
final class FaultTest {
    private static final long BIT = 4 * MICRO;
    private static final long RUN = 400 * MILLI;
    private static final long TURN = 10 * MILLI;

    private TraceLines lines = new TraceLines();

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
    void pairWithoutBiasYieldsPhantomsAndLosesFrames() {
        run(DroplineFrames.create(), segment(FaultKind.MISSING_BIAS, 0, 0));

        assertTrue(
                count("phantom") > 20 && count("received-wrong") > 20,
                () -> "phantom=" + count("phantom") + " wrong=" + count("received-wrong"));
    }

    @Test
    void floatingReceiverOutputSpoilsTheFrameAfterTheOwnReply() {
        run(DroplineFrames.create(), node(FaultKind.FLOATING_RECEIVER, 1, 0, 0));

        assertTrue(wrongAt(1) > 0);
        assertEquals(0, wrongAt(0) + wrongAt(2));
    }

    @Test
    void echoIsHarmlessWhereRepliesAreMarkedAndFatalOtherwise() {
        run(DroplineFrames.create(), segment(FaultKind.ECHO, 0, 0));
        assertEquals(0, count("timed-out"));

        run(ModbusRtu.create(), segment(FaultKind.ECHO, 0, 0));
        assertEquals(0, count("answered"));
    }

    @Test
    void noiseSpoilsFramesOfEverybody() {
        run(DroplineFrames.create(), segment(FaultKind.NOISE_BURST, 100, 2 * MILLI));

        assertTrue(count("received-wrong") > 10);
        assertEquals(0, count("clash"));
        assertTrue(count("answered") > 30);
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
    }

    @Test
    void brownOutRestartsEveryNode() {
        run(DroplineFrames.create(), at(segment(FaultKind.BROWN_OUT, 0, 50 * MILLI), 100 * MILLI));

        assertEquals(3, count("reset"));
    }

    @Test
    void lostStateFrameIsMissedByAllAndSentAgain() {
        run(DroplineFrames.create(), segment(FaultKind.LOST_STATE_FRAME, 0.3, 0));

        assertTrue(wrongAt(0) > 3 && wrongAt(1) > 3 && wrongAt(2) > 3);
        assertEquals(0, count("timed-out"), "polls carry no state here");
    }

    @Test
    void liftedCommonWireLosesFramesOfOneNode() {
        run(DroplineFrames.create(), node(FaultKind.COMMON_WIRE_LIFTED, 1, 0.3, 0));

        assertTrue(wrongAt(1) > 10);
        assertEquals(0, wrongAt(0) + wrongAt(2) + count("clash"));
    }

    private void run(Protocol protocol, Fault... faults) {
        run(pit(protocol, profile(130 * MICRO), 2 * MILLI), faults);
    }

    private void run(Pit pit, Fault... faults) {
        lines = new TraceLines();
        SegmentRun run = new SegmentRun(pit, 0, 1, List.of(faults), lines);
        StateBlock block = new StateBlock();
        for (int i = 0; i < RUN / TURN; i++) {
            block.clear();
            block.addRow(i * TURN + MILLI);
            for (int signal = 0; signal < 3; signal++) {
                block.addChange(signal, i + 1);
            }
            run.offer(block);
            run.advanceTo((i + 1) * TURN);
        }
        run.end();
    }

    /** The second node has a profile of its own. */
    private static Pit pit(Protocol protocol, Profile second, long timeOutNanos) {
        boolean broadcasts = protocol.canBroadcast() && protocol.acknowledgesState();
        Controller controller = new Controller(
                Controller.Kind.HUB,
                Adapter.NONE,
                broadcasts ? Controller.StateDelivery.BROADCAST : Controller.StateDelivery.ADDRESSED,
                timeOutNanos,
                1,
                0,
                0,
                50 * MICRO,
                0,
                0,
                2 * BIT,
                2 * BIT);
        List<Node> nodes = List.of(node(0, profile(100 * MICRO)), node(1, second), node(2, profile(100 * MICRO)));
        Segment segment = new Segment("bus", 250_000, CharacterFormat.EIGHT_N_ONE, protocol, controller, nodes);
        return new Pit(
                "pit",
                0,
                null,
                List.of(Pits.signal(1, false), Pits.signal(2, false), Pits.signal(3, false)),
                List.of(segment));
    }

    private static Node node(int index, Profile profile) {
        return Pits.node("node" + index, 1 + index, profile, List.of(Pits.lamp(index)), List.of());
    }

    private static Profile profile(long gapNanos) {
        return new Profile(
                Profile.ReplyFrom.LOOP,
                Distribution.constant(gapNanos),
                2 * BIT,
                BIT,
                10 * MICRO,
                2,
                63,
                List.of(),
                0,
                0,
                0);
    }

    private static Fault node(FaultKind kind, int node, double rate, long amount) {
        return new Fault(kind, 0, node, -1, -1, 0, Fault.TO_THE_END, rate, amount);
    }

    private static Fault segment(FaultKind kind, double rate, long amount) {
        return new Fault(kind, 0, -1, -1, -1, 0, Fault.TO_THE_END, rate, amount);
    }

    private static Fault at(Fault fault, long fromNanos) {
        return new Fault(
                fault.kind(), 0, fault.node(), -1, -1, fromNanos, Fault.TO_THE_END, fault.rate(), fault.amount());
    }

    private int count(String word) {
        return lines.only(word).size();
    }

    private long answeredBy(int node) {
        return lines.only("answered").stream()
                .filter(line -> line.split(" ")[2].equals(String.valueOf(node)))
                .count();
    }

    private long wrongAt(int receiver) {
        return lines.only("received-wrong").stream()
                .filter(line -> line.split(" ")[2].equals(String.valueOf(receiver)))
                .count();
    }
}
