package dropline.harness.finding;

import static dropline.bus.trace.TraceSink.ALL;
import static dropline.bus.trace.TraceSink.BROADCAST;
import static dropline.bus.trace.TraceSink.CONTROLLER;
import static dropline.bus.trace.TraceSink.REPLY;
import static dropline.bus.trace.TraceSink.REQUEST;

import dropline.bus.chance.Distribution;
import dropline.bus.pit.Adapter;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Signal;
import dropline.bus.pit.Transceiver;
import dropline.bus.trace.TraceSink;
import dropline.protocol.CharacterFormat;
import dropline.protocol.sized.Sized;
import java.util.ArrayList;
import java.util.List;

/**
 * A trace made by hand: four nodes at 250 kbaud, 40 us a character, requests and replies of 10 characters, reply gaps
 * of 100 to 200 us. Each call is one poll or frame, 10 ms after the last.
 */
final class HandTrace {
    static final long MICRO = 1_000;
    static final long MILLI = 1_000_000;
    static final int NODES = 4;
    private static final int CHARS = 10;
    private static final long FRAME = CHARS * 40 * MICRO;
    private static final long GAP = 150 * MICRO;

    private final Pit pit = pit();
    private final Layout layout = Layout.of(pit);
    private final SegmentEvidence evidence;
    final TraceSink sink;
    private long now;
    private int transaction;

    HandTrace(Tiers tiers) {
        evidence = new SegmentEvidence(pit, layout, 0, tiers);
        sink = evidence.sink();
    }

    private static Pit pit() {
        List<Node> nodes = new ArrayList<>();
        Profile profile = new Profile(
                Profile.ReplyFrom.INTERRUPT,
                Distribution.uniform(100 * MICRO, 200 * MICRO),
                4 * MICRO,
                8 * MICRO,
                0,
                2,
                63,
                List.of(),
                500 * MILLI,
                0,
                0,
                Transceiver.USUAL);
        for (int i = 0; i < NODES; i++) {
            nodes.add(new Node("board-" + i, 10 + i, 1, profile, List.of(), List.of()));
        }
        Controller controller = new Controller(
                Controller.Kind.HUB,
                Adapter.NONE,
                Controller.StateDelivery.BROADCAST,
                3 * MILLI,
                0,
                0,
                0,
                50 * MICRO,
                0,
                0,
                0,
                0);
        Segment segment = new Segment(
                "left",
                250_000,
                CharacterFormat.EIGHT_N_ONE,
                Sized.withReply(10, 10, 6, 4, 8),
                controller,
                nodes,
                true);
        Signal signal = new Signal("heading", "deg", 0, 360, 1, true, "heading", 1, 0, 0);
        return new Pit("by hand", 0, null, List.of(signal), List.of(segment));
    }

    List<Finding> findings() {
        sink.ended(now);
        return Findings.of(pit, layout, List.of(evidence));
    }

    /** When the next poll or frame begins, ns. */
    long now() {
        return now;
    }

    /** A poll that nobody answers. */
    HandTrace silent(int node) {
        request(node);
        sink.timedOut(now + 4 * MILLI, node, transaction, 1);
        return next();
    }

    /** A poll answered as described. */
    HandTrace poll(int node) {
        return poll(node, node, GAP, -4 * MICRO, 8 * MICRO, true);
    }

    /** Every node polled and answering, so many times. */
    HandTrace rounds(int count) {
        for (int i = 0; i < count * NODES; i++) {
            poll(i % NODES);
        }
        return this;
    }

    /**
     * @param talker who replies in place of the node polled
     * @param enable driver on, from the first start bit
     * @param release driver off, from the end of the last stop bit
     */
    HandTrace poll(int node, int talker, long gap, long enable, long release, boolean taken) {
        request(node);
        long start = now + FRAME + gap;
        long end = start + FRAME;
        if (enable <= 0) {
            sink.driverOn(start + enable, talker);
        }
        sink.frameStarted(start, talker, REPLY, node, transaction, CHARS);
        if (enable > 0) {
            sink.driverOn(start + enable, talker);
        }
        if (release < 0) {
            sink.driverOff(end + release, talker);
        }
        sink.frameEnded(end, talker, REPLY, node, transaction);
        if (taken) {
            sink.answered(end, node, transaction, 1, gap);
        } else {
            sink.timedOut(now + 4 * MILLI, node, transaction, 1);
        }
        if (release >= 0) {
            sink.driverOff(end + release, talker);
        }
        return next();
    }

    /** A poll whose request this node receives wrong. */
    HandTrace deaf(int node) {
        request(node);
        sink.receivedWrong(now + FRAME, node, CONTROLLER, transaction);
        sink.timedOut(now + 4 * MILLI, node, transaction, 1);
        return next();
    }

    /** A state frame that these nodes receive wrong. */
    HandTrace state(int... wrong) {
        sink.driverOn(now, CONTROLLER);
        sink.frameStarted(now, CONTROLLER, BROADCAST, ALL, ++transaction, CHARS);
        sink.carried(now, ALL, 0, transaction, transaction);
        for (int node : wrong) {
            sink.receivedWrong(now + FRAME, node, CONTROLLER, transaction);
        }
        sink.frameEnded(now + FRAME, CONTROLLER, BROADCAST, ALL, transaction);
        sink.driverOff(now + FRAME, CONTROLLER);
        return next();
    }

    private void request(int node) {
        sink.driverOn(now, CONTROLLER);
        sink.frameStarted(now, CONTROLLER, REQUEST, node, ++transaction, CHARS);
        sink.frameEnded(now + FRAME, CONTROLLER, REQUEST, node, transaction);
        sink.driverOff(now + FRAME, CONTROLLER);
    }

    private HandTrace next() {
        now += 10 * MILLI;
        return this;
    }
}
