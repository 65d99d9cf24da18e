package dropline.bus.bound;

import dropline.bus.clock.BusyPeriod;
import dropline.bus.clock.UartClock;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Profile;
import dropline.bus.plan.SegmentWire;
import dropline.protocol.Destination;
import dropline.protocol.NodeWire;

/**
 * One node's longest times, each from its profile's stated maxima; an endless one is left out, and an obstacle.
 *
 * @param state how the values for it alone go out
 * @param requestChars longest request in use
 * @param replyChars longest reply
 * @param soonestReplyNanos from a request's end to the reply's first start bit, at least, ns
 * @param replyNanos reply's first start bit to its last stop bit, at most, ns
 * @param answerNanos from a request's end to the reply's last stop bit, at most, ns
 * @param loopBlockNanos longest block of its loop, ns, or {@link BusyPeriod#ALWAYS}
 * @param blackoutNanos longest time with interrupts off, ns, or {@link BusyPeriod#ALWAYS}
 * @param waitNanos from its hearing a frame to its program having taken it, at most, ns
 */
record NodeTimes(
        Node node,
        StateFrames state,
        int requestChars,
        int replyChars,
        long soonestReplyNanos,
        long replyNanos,
        long answerNanos,
        long loopBlockNanos,
        long blackoutNanos,
        long waitNanos) {

    static NodeTimes of(Pit pit, Timing timing, Node node) {
        NodeWire described = SegmentWire.of(pit, node);
        Destination wire = timing.segment().protocol().node(described);
        Profile profile = node.profile();
        boolean addressed = timing.segment().controller().state() == Controller.StateDelivery.ADDRESSED;
        int plain = wire.requestChars(new int[0], 0);
        int replyChars = wire.longestReplyChars();
        UartClock clock = profile.clock(timing.segment().baud());
        long reply = clock.charsNanos(timing.segment().format(), replyChars);
        long loop = LongestBlock.ofLoop(node);
        long blackout = LongestBlock.ofInterrupts(node);
        long blocked = finite(profile.replyFrom() == Profile.ReplyFrom.LOOP ? loop : blackout);
        long known = timing.silenceNanos() - timing.afterHearingNanos();
        long longestGap =
                Math.max(timing.silenceNanos(), finite(profile.replyGap().longestNanos()));
        long start = Math.max(Math.max(0, known + blocked) + longestGap, known + profile.enableLeadNanos());
        long shortestGap = Math.max(timing.silenceNanos(), profile.replyGap().baseNanos());
        return new NodeTimes(
                node,
                StateFrames.of(
                        timing.segment().protocol(), wire, described.signals().size()),
                addressed ? Math.max(plain, wire.longestRequestChars()) : plain,
                replyChars,
                Math.max(Math.max(0, known) + shortestGap, known + profile.enableLeadNanos()),
                reply,
                start + reply,
                loop,
                blackout,
                timing.silenceNanos() + finite(loop) + profile.loopPassNanos());
    }

    private static long finite(long nanos) {
        return nanos == Long.MAX_VALUE ? 0 : nanos;
    }
}
