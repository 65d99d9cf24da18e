package dropline.bus.run;

import static dropline.bus.Pits.MICRO;
import static dropline.bus.Pits.MILLI;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.Pits;
import dropline.bus.fault.Fault;
import dropline.bus.host.StateBlock;
import dropline.bus.pit.Control;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Signal;
import dropline.bus.pit.Transceiver;
import dropline.bus.trace.TraceLines;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What controller and nodes say to each other, event by event. 20 us a character; all frames of 10 take 200 us. */
final class ConversationTest {
    private static final Signal LAMP = Pits.signal(0, false);
    private final TraceLines lines = new TraceLines();

    @Test
    void aPollIsAskedAnsweredAndAskedAgain() {
        SegmentRun run = start(pit(Pits.controller(StateDelivery.BROADCAST, MILLI, 0), 100 * MICRO));

        run.advanceTo(600 * MICRO);
        run.end();

        assertEquals(
                List.of(
                        "0 started -1 0 0 1 10",
                        "200000 ended -1 0 0 1",
                        "300000 started 0 1 0 1 10",
                        "499000 answered 0 1 1 100000",
                        "500000 ended 0 1 0 1",
                        "550000 started -1 0 0 2 10"),
                lines.only("started", "ended", "answered"));
    }

    @Test
    void beingBlockedWhileARequestEndsMakesNoReplyComeSooner() {
        Profile usual = Pits.profile(100 * MICRO);
        Profile blocked = new Profile(
                usual.replyFrom(),
                usual.replyGap(),
                usual.enableLeadNanos(),
                usual.releaseTailNanos(),
                usual.loopPassNanos(),
                usual.fifoChars(),
                usual.ringChars(),
                List.of(new Profile.Task("display", 347_311, 40 * MICRO, Indicator.Blocks.LOOP)),
                usual.bootNanos(),
                usual.clockHz(),
                usual.ticksPerBit(),
                usual.transceiver());
        Node node = Pits.node("panel", 1, blocked, List.of(), List.of());
        Pit pit = Pits.pit(List.of(LAMP), Pits.controller(StateDelivery.BROADCAST, MILLI, 0), List.of(node));

        // each seed has another phase of the display
        for (long seed = 1; seed <= 1000; seed++) {
            TraceLines heard = new TraceLines();
            SegmentRun run = new SegmentRun(pit, 0, seed, List.of(), heard);
            run.advanceTo(5 * MILLI);
            run.end();

            List<Long> gaps = heard.only("answered").stream()
                    .map(line -> Long.parseLong(line.substring(line.lastIndexOf(' ') + 1)))
                    .toList();
            assertTrue(gaps.size() > 5, "seed " + seed);
            assertTrue(gaps.stream().allMatch(gap -> gap >= 100 * MICRO), "seed " + seed + ": " + gaps);
        }
    }

    @Test
    void replyEndingExactlyAtItsDeadlineIsInTimeAndOneNanosecondLaterIsNot() {
        SegmentRun inTime = start(pit(Pits.controller(StateDelivery.BROADCAST, 300 * MICRO, 0), 100 * MICRO));
        inTime.advanceTo(600 * MICRO);
        TraceLines late = new TraceLines();
        SegmentRun tooLate = new SegmentRun(
                pit(Pits.controller(StateDelivery.BROADCAST, 300 * MICRO - 1, 0), 100 * MICRO), 0, 1, List.of(), late);
        tooLate.advanceTo(600 * MICRO);

        assertEquals(1, lines.only("answered").size());
        assertEquals(0, lines.only("timed-out").size());
        assertEquals(List.of(), late.only("answered"));
        assertEquals(List.of("499999 timed-out 0 1 1"), late.only("timed-out"));
    }

    @Test
    void lateReplyTouchesTheNextRequestAndNeitherIsReceived() {
        SegmentRun run = start(pit(Pits.controller(StateDelivery.BROADCAST, 100 * MICRO, 0), 200 * MICRO));

        run.advanceTo(900 * MICRO);

        assertEquals(List.of("400000 clash 0 -1"), lines.only("clash").subList(0, 1));
        assertEquals(List.of(), lines.only("answered"));
    }

    @Test
    void deadNodeIsAskedAgainThenGivenUp() {
        Pit pit = pit(Pits.controller(StateDelivery.BROADCAST, MILLI, 2), 100 * MICRO);
        SegmentRun run = new SegmentRun(pit, 0, 1, List.of(Fault.deadNode(0, 0)), lines);

        run.advanceTo(4 * MILLI);

        assertEquals(
                List.of(
                        "1200000 timed-out 0 1 1",
                        "2450000 timed-out 0 1 2",
                        "3700000 timed-out 0 1 3",
                        "3700000 gave-up 0 1"),
                lines.only("timed-out", "gave-up"));
    }

    @Test
    void newerValueTakesThePlaceOfOneThatWaits() {
        SegmentRun run = start(pit(Pits.controller(StateDelivery.BROADCAST, MILLI, 0), 100 * MICRO));
        StateBlock block = new StateBlock();
        block.addRow(10);
        block.addChange(0, 1);
        block.addRow(20);
        block.addChange(0, 2);

        run.offer(block);
        run.advanceTo(2 * MILLI);

        assertEquals(
                List.of("10 queued -1 0 1", "20 coalesced -1 0 1", "20 queued -1 0 2", "550000 carried -1 0 2 1"),
                lines.only("queued", "coalesced", "carried"));
        assertEquals(List.of("749000 shown 0 2"), lines.only("shown"));
    }

    @Test
    void addressedStateRidesOnThePoll() {
        SegmentRun run = start(pit(Pits.controller(StateDelivery.ADDRESSED, MILLI, 0), 100 * MICRO));
        StateBlock block = new StateBlock();
        block.addRow(10);
        block.addChange(0, 1);

        run.offer(block);
        run.advanceTo(2 * MILLI);

        assertEquals(List.of("550000 carried 0 0 1 2"), lines.only("carried"));
        assertEquals("550000 started -1 0 0 2 14", lines.only("started").get(2));
        assertEquals(List.of("829000 shown 0 1"), lines.only("shown"));
    }

    @Test
    void valueInALostPollIsSentAgain() {
        Profile stalled = new Profile(
                Profile.ReplyFrom.LOOP,
                dropline.bus.chance.Distribution.constant(100 * MICRO),
                0,
                0,
                0,
                2,
                3,
                List.of(new Profile.Task("stall", 3 * MILLI, 2 * MILLI, Indicator.Blocks.LOOP)),
                0,
                0,
                0,
                Transceiver.USUAL);
        Pit pit = Pits.pit(
                List.of(LAMP),
                Pits.controller(StateDelivery.ADDRESSED, 500 * MICRO, 0),
                List.of(Pits.node("node", 1, stalled, List.of(Pits.lamp(0)), List.of())));
        SegmentRun run = start(pit);
        StateBlock block = new StateBlock();
        for (int k = 1; k <= 60; k++) {
            block.addRow(k * MILLI);
            block.addChange(0, k);
        }

        run.offer(block);
        run.advanceTo(80 * MILLI);

        assertTrue(lines.only("overrun").size() > 5, "the stall loses requests");
        assertTrue(lines.only("shown").get(lines.only("shown").size() - 1).endsWith(" 0 60"), "the last value arrives");
    }

    @Test
    void pressShorterThanItsDebounceIsNeverToldAndALongOneIs() {
        Control button = new Control("button", Control.Kind.BUTTON, 0, 5 * MILLI, 0, 0);
        Pit pit = Pits.pit(
                List.of(LAMP),
                Pits.controller(StateDelivery.BROADCAST, MILLI, 0),
                List.of(Pits.node("node", 1, Pits.profile(100 * MICRO), List.of(Pits.lamp(0)), List.of(button))));
        SegmentRun run = start(pit);
        StateBlock block = new StateBlock();
        block.addMove(MILLI, 0, 1);
        block.addMove(3 * MILLI, 0, 0);
        block.addMove(10 * MILLI, 0, 1);
        block.addMove(30 * MILLI, 0, 0);

        run.offer(block);
        run.advanceTo(40 * MILLI);

        assertEquals(
                List.of("1000000 control-moved 0 1 1", "10000000 control-moved 0 2 1"), lines.only("control-moved"));
        assertEquals(List.of("15000000 sampled 0 2"), lines.only("sampled"));
        assertEquals(1, lines.only("told").size());
        assertTrue(lines.only("told").get(0).endsWith(" told 0 2"));
    }

    @Test
    void stretchesOfAnyLengthGiveTheSameTrace() {
        long whole = ReferenceBus.run(2, true, 3, -1, lines).digest();

        TraceLines parts = new TraceLines();
        SegmentRun run = new SegmentRun(ReferenceBus.pit(), 0, 3, List.of(), parts);
        StateBlock block = new StateBlock();
        boolean[] on = new boolean[58];
        int turn = 0;
        for (long at = 0; at < 2_000 * MILLI; at += 25 * MILLI) {
            block.clear();
            if (at > 0) {
                block.addRow(at);
                for (int i = 0; i < 40; i++) {
                    on[turn] = !on[turn];
                    block.addChange(turn, on[turn] ? 1 : 0);
                    turn = (turn + 1) % 58;
                }
            }
            run.offer(block);
            run.advanceTo(at + 3 * MILLI);
            run.advanceTo(at + 25 * MILLI);
        }
        run.end();

        assertEquals(whole, run.digest());
        assertEquals(lines.lines(), parts.lines());
    }

    @Test
    void addingANodeChangesNobodysReplyGap() {
        Pit one = pit(Pits.controller(StateDelivery.BROADCAST, MILLI, 0), 100 * MICRO);
        Node first = ReferenceBus.pit().segments().get(0).nodes().get(0);
        Node second = ReferenceBus.pit().segments().get(0).nodes().get(1);
        List<Signal> signals = ReferenceBus.pit().signals();
        Controller controller = one.segments().get(0).controller();
        TraceLines alone = new TraceLines();
        TraceLines both = new TraceLines();

        new SegmentRun(Pits.pit(signals, controller, List.of(first)), 0, 1, List.of(), alone).advanceTo(MILLI);
        new SegmentRun(Pits.pit(signals, controller, List.of(first, second)), 0, 1, List.of(), both).advanceTo(MILLI);

        assertEquals(alone.only("answered").get(0), both.only("answered").get(0));
    }

    private SegmentRun start(Pit pit) {
        return new SegmentRun(pit, 0, 1, List.of(), lines);
    }

    private static Pit pit(Controller controller, long replyGapNanos) {
        Node node = Pits.node("node", 1, Pits.profile(replyGapNanos), List.of(Pits.lamp(0)), List.of());
        return Pits.pit(List.of(LAMP), controller, List.of(node));
    }
}
