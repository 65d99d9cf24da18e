package dropline.bus.pit;

import dropline.bus.clock.UartClock;
import dropline.protocol.CharacterFormat;
import dropline.protocol.Protocol;
import java.util.List;

/**
 * One RS-485 pair with one controller and its nodes.
 *
 * @param name unique in the pit
 * @param baud bits a second, 300..4,000,000
 * @param format how a character stands on the wire
 * @param protocol how its parties speak
 * @param controller the party that polls
 * @param nodes in the order in which they are polled
 * @param biased whether the pair rests at one while nobody drives it: bias resistors, or receivers that are fail-safe
 * @param cable how its cable runs
 */
public record Segment(
        String name,
        int baud,
        CharacterFormat format,
        Protocol protocol,
        Controller controller,
        List<Node> nodes,
        boolean biased,
        Cable cable) {

    public Segment {
        nodes = List.copyOf(nodes);
        if (baud < 300 || baud > 4_000_000) {
            throw new IllegalArgumentException("baud must be 300..4000000: baud=" + baud);
        }
        if (nodes.isEmpty()) {
            throw new IllegalArgumentException("a segment must have a node: segment=" + name);
        }
        if (!cable.reaches(nodes.size())) {
            throw new IllegalArgumentException(
                    "a cable must stop once at each node: segment=" + name + " arms=" + cable.arms());
        }
        if (cable.topology() == Cable.Topology.DIRECT && (nodes.size() > 1 || !biased)) {
            throw new IllegalArgumentException("a direct segment has one node and no pair to bias: segment=" + name);
        }
    }

    /** A chain that begins at the controller and goes on in the order in which nodes are polled. */
    public Segment(
            String name,
            int baud,
            CharacterFormat format,
            Protocol protocol,
            Controller controller,
            List<Node> nodes,
            boolean biased) {
        this(name, baud, format, protocol, controller, nodes, biased, Cable.chain(nodes.size()));
    }

    /** Whether its parties share a pair, on which only one may speak at a time. */
    public boolean isShared() {
        return cable.topology() != Cable.Topology.DIRECT;
    }

    /** Silence that must lie before every frame, and by which a receiver knows that one is over, ns. */
    public long silenceNanos() {
        return UartClock.ticksToNanos(protocol.silenceBeforeTenthsOfBit(baud, format), 10L * baud);
    }

    /** The same with other nodes, and the cable that stops at each of them. */
    public Segment with(List<Node> others, Cable otherCable) {
        return new Segment(name, baud, format, protocol, controller, others, biased, otherCable);
    }

    /** The same polled otherwise. */
    public Segment with(Controller other) {
        return new Segment(name, baud, format, protocol, other, nodes, biased, cable);
    }
}
