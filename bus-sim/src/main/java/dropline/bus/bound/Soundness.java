package dropline.bus.bound;

import dropline.bus.bound.Obstacle.Kind;
import dropline.bus.clock.BusyPeriod;
import dropline.bus.clock.ClockTolerance;
import dropline.bus.clock.UartClock;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Transceiver;
import dropline.protocol.Protocol;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Whether every frame that a node of a segment sends or is sent surely arrives while nothing is broken, and if not,
 * why. What may go wrong once may go wrong again and again, since a node's tasks can keep step with its polls.
 */
final class Soundness {
    /** A character counts as had this share of its length before its end. */
    private static final int PART = 10;

    private final Timing timing;
    private final Segment segment;
    private final Controller controller;
    private final long charNanos;
    private final long leastPauseNanos;
    private final int longestFrameChars;

    /** @param broadcastChars longest broadcast; 0 where there are none */
    Soundness(Timing timing, List<NodeTimes> nodes, int broadcastChars) {
        this.timing = timing;
        segment = timing.segment();
        controller = segment.controller();
        long shortest = Long.MAX_VALUE;
        long pause = timing.quietNanos();
        int longest = broadcastChars;
        for (NodeTimes times : nodes) {
            UartClock clock = times.node().profile().clock(segment.baud());
            shortest = Math.min(shortest, clock.charsNanos(segment.format(), 1));
            pause = Math.min(pause, times.soonestReplyNanos());
            longest = Math.max(longest, Math.max(times.requestChars(), times.replyChars()));
        }
        charNanos = Math.min(shortest, timing.chars(1, 0)) - 1;
        leastPauseNanos = pause;
        longestFrameChars = longest;
    }

    /** What keeps frames to or from a node from surely arriving, or null. */
    @Nullable
    Obstacle obstacle(NodeTimes times, int position) {
        Profile profile = times.node().profile();
        long answer = times.answerNanos();
        boolean host = controller.kind() == Controller.Kind.HOST;
        long block = profile.replyFrom() == Profile.ReplyFrom.LOOP ? times.loopBlockNanos() : times.blackoutNanos();
        if (!segment.biased()) {
            return new Obstacle(Kind.FLOATING_PAIR, -1, 0, 0);
        }
        if (profile.replyGap().longestNanos() == Long.MAX_VALUE) {
            return new Obstacle(Kind.NO_MAXIMUM, position, 0, 0);
        }
        if (!timing.hasMaximum()) {
            return new Obstacle(Kind.NO_MAXIMUM, -1, 0, 0);
        }
        if (block == BusyPeriod.ALWAYS || answer > controller.timeOutNanos()) {
            return new Obstacle(
                    Kind.LATE_REPLY, position, block == BusyPeriod.ALWAYS ? 0 : answer, controller.timeOutNanos());
        }
        boolean holds = profile.transceiver().driver() != Transceiver.Driver.ZEROS_ONLY && segment.isShared();
        if (holds && profile.releaseTailNanos() > timing.quietNanos()) {
            return new Obstacle(Kind.LATE_RELEASE, position, profile.releaseTailNanos(), timing.quietNanos());
        }
        if (host && answer + timing.receiveNanos() > controller.timeOutNanos()) {
            return new Obstacle(Kind.LATE_ADAPTER, position, answer + timing.receiveNanos(), controller.timeOutNanos());
        }
        if (segment.isShared() && times.soonestReplyNanos() < controller.releaseTailNanos()) {
            return new Obstacle(Kind.EARLY_REPLY, position, times.soonestReplyNanos(), controller.releaseTailNanos());
        }
        return ofReceiver(times, position);
    }

    /** Whether a node and the controller, whose clock is exact, surely understand each other. */
    private boolean understandsTheController(UartClock node, Transceiver transceiver) {
        double ratio = node.baud() / segment.baud();
        return ClockTolerance.of(segment.format(), transceiver.samplesPerBit()).covers(1 / ratio)
                && ClockTolerance.of(segment.format(), Transceiver.USUAL.samplesPerBit())
                        .covers(ratio);
    }

    private @Nullable Obstacle ofReceiver(NodeTimes times, int position) {
        Profile profile = times.node().profile();
        Transceiver transceiver = profile.transceiver();
        if (!understandsTheController(profile.clock(segment.baud()), transceiver)) {
            return new Obstacle(Kind.CLOCK, position, 0, 0);
        }
        if (transceiver.receiver() == Transceiver.Receiver.FLOATING_WHILE_SENDING
                && segment.protocol().framing() == Protocol.Framing.AFTER_DELIMITER) {
            return new Obstacle(Kind.FLOATING_RECEIVER, position, 0, 0);
        }
        if (times.loopBlockNanos() == BusyPeriod.ALWAYS || times.blackoutNanos() == BusyPeriod.ALWAYS) {
            return new Obstacle(Kind.ALWAYS_BLOCKED, position, 0, 0);
        }
        long fifo = profile.fifoChars() * charNanos;
        if (times.blackoutNanos() > fifo) {
            return new Obstacle(Kind.FIFO_OVERRUN, position, times.blackoutNanos(), fifo);
        }
        long ring = lastsNanos(profile.ringChars());
        return times.loopBlockNanos() > ring
                ? new Obstacle(Kind.RING_OVERRUN, position, times.loopBlockNanos(), ring)
                : null;
    }

    /** How long a ring of so many characters surely lasts: frames as long and pauses as short as they come, ns. */
    private long lastsNanos(int ringChars) {
        long frames = ((long) ringChars + longestFrameChars) / longestFrameChars;
        return ringChars * charNanos + (frames - 1) * leastPauseNanos - charNanos / PART;
    }
}
