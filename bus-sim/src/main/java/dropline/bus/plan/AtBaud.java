package dropline.bus.plan;

import dropline.bus.pit.Controller;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.protocol.Destination;
import java.util.ArrayList;
import java.util.List;

/**
 * A segment at another baud rate than is written. Each node's UART is set to the nearest rate its clock makes; the
 * time-out grows or shrinks with the longest reply, so that a slow node has as much time as before. What firmware does
 * by its own clock (reply gaps, leads, tails) stays as it is.
 */
public final class AtBaud {
    private AtBaud() {}

    /** The pit with one of its segments at this rate; itself where that is the segment's own. */
    public static Pit of(Pit pit, int segment, int baud) {
        Segment before = pit.segments().get(segment);
        if (before.baud() == baud) {
            return pit;
        }
        List<Node> nodes = new ArrayList<>();
        before.nodes().forEach(node -> nodes.add(node.with(node.profile().at(baud), node.panels())));
        Segment after = with(before, baud, before.controller(), nodes);
        long longer = longestAnswerNanos(pit, after) - longestAnswerNanos(pit, before);
        long timeOut = Math.max(1, before.controller().timeOutNanos() + longer);
        return pit.with(segment, with(before, baud, before.controller().withTimeOut(timeOut), nodes));
    }

    /** By how much a node's UART misses its segment's rate: +0.021 is 2.1 % fast. */
    public static double error(Segment segment, Node node) {
        return node.profile().clock(segment.baud()).baud() / segment.baud() - 1;
    }

    private static Segment with(Segment segment, int baud, Controller controller, List<Node> nodes) {
        return new Segment(
                segment.name(),
                baud,
                segment.format(),
                segment.protocol(),
                controller,
                nodes,
                segment.biased(),
                segment.cable());
    }

    /** From the end of a request to the end of the longest reply, where it begins as soon as it may, ns. */
    private static long longestAnswerNanos(Pit pit, Segment segment) {
        long longest = 0;
        for (Node node : segment.nodes()) {
            Destination wire = segment.protocol().node(SegmentWire.of(pit, node));
            long gap =
                    Math.max(segment.silenceNanos(), node.profile().replyGap().baseNanos());
            longest = Math.max(longest, gap + PollFloor.chars(segment, wire.longestReplyChars()));
        }
        return longest;
    }
}
