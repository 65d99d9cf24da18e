package dropline.bus.plan;

import dropline.bus.clock.UartClock;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.protocol.Destination;
import dropline.protocol.sized.Sized;

/**
 * How fast a segment's poll cycle can be at best: every node answers at once, nothing blocks, no state is sent, and the
 * USB stage costs nothing. A poll takes the turn that its hub's program needs before each frame, request, reply gap,
 * reply, and the gap before the next; where the protocol needs silence before every frame, neither gap is shorter than
 * that. A node of weight w is polled w times.
 *
 * @param characterNanos one character, ns
 * @param shortestCycleNanos sum of all polls with the least reply gaps and the shortest replies, ns
 * @param meanCycleNanos the same with mean reply gaps and mean replies, ns; no draw held at a maximum
 */
public record PollFloor(long characterNanos, long shortestCycleNanos, double meanCycleNanos) {
    private static final int[] NOTHING = new int[0];

    /** The floor of one segment of a pit. */
    public static PollFloor of(Pit pit, Segment segment) {
        long turn = pit.turnNanos(pit.segments().indexOf(segment));
        long shortest = 0;
        double mean = 0;
        for (Node node : segment.nodes()) {
            Destination wire = segment.protocol().node(SegmentWire.of(pit, node));
            long around = chars(segment, wire.requestChars(NOTHING, 0))
                    + Math.max(segment.controller().gapNanos(), segment.silenceNanos())
                    + turn;
            double meanGap = Math.max(
                    (double) segment.silenceNanos(), node.profile().replyGap().meanNanos());
            shortest += node.weight() * (around + shortestAnswerNanos(pit, segment, node));
            mean += node.weight() * (around + meanGap + chars(segment, 1) * meanReplyChars(segment, wire));
        }
        return new PollFloor(chars(segment, 1), shortest, mean);
    }

    /**
     * Mean cycle where state takes this share of the wire's time between polls: what is left is all the polls have, ns.
     *
     * @param share 0 or more, below 1
     */
    public double meanCycleNanos(double share) {
        if (!(share >= 0 && share < 1)) {
            throw new IllegalArgumentException("share must be 0 or more and below 1: share=" + share);
        }
        return meanCycleNanos / (1 - share);
    }

    /** From the end of a plain poll to the end of the node's reply at best, ns. */
    public static long shortestAnswerNanos(Pit pit, Segment segment, Node node) {
        Destination wire = segment.protocol().node(SegmentWire.of(pit, node));
        long gap = Math.max(segment.silenceNanos(), node.profile().replyGap().baseNanos());
        return gap + chars(segment, shortestReplyChars(segment, wire));
    }

    /** So many characters without pause, ns. */
    static long chars(Segment segment, int count) {
        return UartClock.exact(segment.baud()).charsNanos(segment.format(), count);
    }

    private static int shortestReplyChars(Segment segment, Destination wire) {
        if (segment.protocol() instanceof Sized sized) {
            return sized.replies().stream()
                    .mapToInt(Sized.ReplyChoice::chars)
                    .min()
                    .orElseThrow();
        }
        return wire.replyChars(NOTHING, 0, 0);
    }

    private static double meanReplyChars(Segment segment, Destination wire) {
        if (segment.protocol() instanceof Sized sized) {
            return sized.replies().stream()
                    .mapToDouble(reply -> reply.chars() * reply.probability())
                    .sum();
        }
        return wire.replyChars(NOTHING, 0, 0);
    }
}
