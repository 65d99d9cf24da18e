package dropline.bus.run;

import static dropline.bus.Pits.MICRO;
import static dropline.bus.Pits.MILLI;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import dropline.bus.Pits;
import dropline.bus.chance.Distribution;
import dropline.bus.fault.Fault;
import dropline.bus.host.StateBlock;
import dropline.bus.pit.Adapter;
import dropline.bus.pit.Cable;
import dropline.bus.pit.Control;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.pit.Hub;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.trace.TraceLines;
import dropline.bus.trace.TraceSink;
import dropline.protocol.CharacterFormat;
import dropline.protocol.sized.Sized;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/**
 * Segments of one board, by hand. Each has one node; 20 us a character; a poll takes 200 us, its reply comes 100 us
 * later and takes 200 us, then there is a gap of 50 us: 550 us from poll to poll.
 */
final class LaneRunTest {
    private static final Adapter QUICK = Adapter.NONE;

    private final Map<Integer, TraceLines> lines = new TreeMap<>();

    @Test
    void boardOfTwoSegmentsPreparesOneFrameAtATimeAndSendsThemSideBySide() {
        run(board(MILLI, QUICK, 10, 10), List.of(), 6 * MILLI);

        assertEquals(List.of("1000000", "3000000", "5000000"), polls(0));
        assertEquals(List.of("2000000", "4000000"), polls(1));
    }

    @Test
    void programIsFreeAgainAfterItsTurnWhileTheFrameStillTravels() {
        run(board(300 * MICRO, QUICK, 10, 10), List.of(), 2 * MILLI);

        assertEquals(List.of("300000", "1150000"), polls(0), "ready at 850, free at 600: 850 + 300");
        assertEquals(List.of("600000", "1450000"), polls(1), "ready at 1150, just when the program is free");
    }

    @Test
    void turnsGoToWhoAskedFirstSoThatNoSegmentStarves() {
        run(board(MILLI, QUICK, 10, 10, 10), List.of(), 8 * MILLI);

        assertEquals(List.of("1000000", "4000000", "7000000"), polls(0));
        assertEquals(List.of("2000000", "5000000"), polls(1));
        assertEquals(List.of("3000000", "6000000"), polls(2));
    }

    @Test
    void deadNodeOfOneSegmentLeavesTheProgramToTheOther() {
        run(board(MILLI, QUICK, 10, 10), List.of(Fault.deadNode(1, 1)), 10 * MILLI);

        assertEquals(List.of("2000000", "8650000"), polls(1), "5 ms of time-out, then the turn that begins at 7650");
        assertEquals(
                List.of("1000000", "3000000", "4550000", "6100000", "7650000", "9650000"),
                polls(0),
                "two turns at first, then every 1550, and two turns again once the other has given up");
    }

    @Test
    void aloneOnItsBoardASegmentWaitsForItsOwnTurnsOnly() {
        run(board(MILLI, QUICK, 10), List.of(), 5 * MILLI);

        assertEquals(List.of("1000000", "2550000", "4100000"), polls(0));
    }

    @Test
    void fullPacketOfOneSegmentStartsTheTimerOfTheOtherAfresh() {
        Adapter timer = new Adapter("16 ms timer", 16 * MILLI, 62, 0, Distribution.constant(0));
        StateBlock block = new StateBlock();
        block.addMove(1200 * MICRO, 1, 1);

        run(board(0, timer, 62, 10), List.of(), block, 40 * MILLI);

        assertEquals(
                List.of("17540000 told 1 1"),
                seen(1).only("told"),
                "said at 1400..1600; the other segment's 62 characters left at 1540");
    }

    @Test
    void stateReachesAllSegmentsOfABoardAtOneInstant() {
        Adapter usb = new Adapter("usb", 0, 64, MILLI, Distribution.uniform(0, MILLI));
        StateBlock block = new StateBlock();
        block.addRow(100 * MICRO);
        block.addChange(0, 1);
        block.addChange(1, 1);

        Pit together = board(0, usb, 10, 10);
        run(together, List.of(), block, 5 * MILLI);
        assertEquals(queuedNanos(0), queuedNanos(1));

        lines.clear();
        run(apart(together), List.of(), block, 5 * MILLI);
        assertNotEquals(queuedNanos(0), queuedNanos(1));
    }

    @Test
    void boardThatCostsNothingChangesNothing() {
        for (long seed = 1; seed <= 300; seed++) {
            RandomBus bus = new RandomBus(seed);
            long alone = digest(bus, bus.pit(), seed);

            Pit onBoard = on(bus.pit(), List.of(new Hub("board", Hub.Kind.BOARD, 0, List.of(0))));
            assertEquals(alone, digest(bus, onBoard, seed), "seed " + seed);

            List<Segment> two = new ArrayList<>(bus.pit().segments());
            two.add(two.get(0));
            Pit pair = new Pit(
                    "pair",
                    0,
                    null,
                    bus.pit().signals(),
                    two,
                    List.of(new Hub("board", Hub.Kind.BOARD, 0, List.of(0, 1))));
            assertEquals(alone, digest(bus, pair, seed), "two segments in step, seed " + seed);
        }
    }

    @Test
    void boardStraightOnUsbMaySpeakWhileItIsSpokenTo() {
        Controller impatient = new Controller(
                Controller.Kind.HOST, QUICK, StateDelivery.BROADCAST, 100 * MICRO, 0, 0, 0, 50 * MICRO, 0, 0, 0, 0);

        run(one(impatient, Cable.chain(1)), List.of(), MILLI);
        assertEquals("400000 clash 0 -1", seen(0).only("clash").get(0));

        lines.clear();
        Cable straight = new Cable(Cable.Topology.DIRECT, Cable.chain(1).arms());
        run(one(impatient, straight), List.of(), MILLI);
        assertEquals(List.of(), seen(0).only("clash", "received-wrong"));
    }

    private Pit one(Controller controller, Cable cable) {
        Node node = Pits.node("late", 1, Pits.profile(200 * MICRO), List.of(Pits.lamp(0)), List.of());
        Segment segment = new Segment(
                "desk", 500_000, CharacterFormat.EIGHT_N_ONE, sized(10), controller, List.of(node), true, cable);
        return new Pit("desk", 0, null, List.of(Pits.signal(0, false)), List.of(segment));
    }

    /** A board with a segment for each of these lengths of reply. */
    private static Pit board(long turnNanos, Adapter adapter, int... replyChars) {
        Controller controller = new Controller(
                Controller.Kind.HUB, adapter, StateDelivery.BROADCAST, 5 * MILLI, 0, 0, 0, 50 * MICRO, 0, 0, 0, 0);
        List<Segment> segments = new ArrayList<>();
        List<Integer> ports = new ArrayList<>();
        for (int s = 0; s < replyChars.length; s++) {
            Control toggle = new Control("toggle" + s, Control.Kind.TOGGLE, s, 0, 0, 0);
            Node node = Pits.node("node" + s, 1, Pits.profile(100 * MICRO), List.of(Pits.lamp(s)), List.of(toggle));
            ports.add(s);
            segments.add(new Segment(
                    "segment" + s,
                    500_000,
                    CharacterFormat.EIGHT_N_ONE,
                    sized(replyChars[s]),
                    controller,
                    List.of(node),
                    true));
        }
        return new Pit(
                "board",
                0,
                null,
                List.of(Pits.signal(0, false), Pits.signal(1, false), Pits.signal(2, false)),
                segments,
                List.of(new Hub("board", Hub.Kind.BOARD, turnNanos, ports)));
    }

    private static Sized sized(int replyChars) {
        return new Sized(10, List.of(new Sized.ReplyChoice(replyChars, 1)), 6, 4, 10, 0);
    }

    private static Pit apart(Pit pit) {
        return on(pit, List.of());
    }

    private static Pit on(Pit pit, List<Hub> hubs) {
        return new Pit(pit.name(), pit.statePeriodNanos(), pit.load(), pit.signals(), pit.segments(), hubs);
    }

    private void run(Pit pit, List<Fault> faults, long untilNanos) {
        run(pit, faults, new StateBlock(), untilNanos);
    }

    private void run(Pit pit, List<Fault> faults, StateBlock block, long untilNanos) {
        for (int segment = 0; segment < pit.segments().size(); segment++) {
            lines.put(segment, new TraceLines());
        }
        for (int segment = 0; segment < pit.segments().size(); segment++) {
            if (pit.runsWith(segment).get(0) == segment) {
                LaneRun lane = new LaneRun(pit, segment, 1, faults, lines::get);
                lane.offer(block);
                lane.advanceTo(untilNanos);
                lane.end();
            }
        }
    }

    private static long digest(RandomBus bus, Pit pit, long seed) {
        LaneRun lane = new LaneRun(pit, 0, seed, bus.faults(), index -> new TraceSink() {});
        bus.run(lane::offer, lane::advanceTo);
        lane.end();
        return lane.segment(0).digest();
    }

    private TraceLines seen(int segment) {
        return Objects.requireNonNull(lines.get(segment));
    }

    private List<String> polls(int segment) {
        return seen(segment).only("started").stream()
                .map(line -> line.split(" "))
                .filter(words -> words[2].equals("-1"))
                .map(words -> words[0])
                .toList();
    }

    private String queuedNanos(int segment) {
        return seen(segment).only("queued").get(0).split(" ")[0];
    }
}
