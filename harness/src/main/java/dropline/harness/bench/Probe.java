package dropline.harness.bench;

import dropline.bus.pit.Segment;
import dropline.bus.plan.SegmentWire;
import dropline.harness.live.Asking;
import dropline.protocol.Bytes;
import dropline.protocol.Destination;
import dropline.protocol.NodeStatus;
import dropline.protocol.NodeWire;
import dropline.protocol.Protocol;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** What is said to a board to see what it does. */
final class Probe {
    private static final NodeStatus STATUS = new NodeStatus(0, 0, 0, 0, 0);

    private Probe() {}

    /** Polls of others: one who is not there, and two of its neighbours. */
    static List<Bytes> toAnother(Asking asking, Subject subject) {
        List<Bytes> said = new ArrayList<>();
        said.add(asking.pollOf(new NodeWire(subject.freeAddress(), List.of(), List.of())));
        subject.others().stream().map(asking::pollOf).forEach(said::add);
        return said;
    }

    /** State for all, where the protocol has that. */
    static List<Bytes> toAll(Subject subject) {
        Protocol protocol = subject.on().protocol();
        NodeWire all = SegmentWire.all(subject.pit(), subject.on());
        if (!protocol.canBroadcast() || all.signals().isEmpty()) {
            return List.of();
        }
        return carrying(
                protocol.broadcast(all), all.signals().size(), all.signals().size());
    }

    /** Its own polls: plain, with one value, with two, with as many as go into one. */
    static List<Bytes> ofEveryLength(Subject subject) {
        Destination own = subject.on().protocol().node(subject.wire());
        int signals = subject.wire().signals().size();
        Set<Bytes> said = new LinkedHashSet<>();
        said.add(own.encodeRequest(0, new int[0], 0, new long[0]));
        for (int count : new int[] {1, 2, signals}) {
            said.addAll(carrying(own, signals, Math.min(count, signals)));
        }
        return List.copyOf(said);
    }

    /** A request that carries as many of the first signals as go into it, all at nought. */
    private static List<Bytes> carrying(Destination destination, int signals, int wanted) {
        int[] picked = new int[signals];
        long[] pending = new long[signals / 64 + 1];
        for (int i = 0; i < wanted; i++) {
            pending[i / 64] |= 1L << (i % 64);
        }
        int count = wanted == 0 ? 0 : destination.pick(pending, 0, picked);
        return count == 0 ? List.of() : List.of(destination.encodeRequest(0, picked, count, new long[count]));
    }

    /**
     * A poll with each of its parts damaged: every byte but the last has a bit flipped, or it ends too soon or late.
     */
    static List<Bytes> damaged(Bytes poll) {
        List<Bytes> damaged = new ArrayList<>();
        for (int i = 0; i < poll.length() - 1; i++) {
            int[] values = values(poll);
            // never a zero, which would end a frame of some protocols
            values[i] = (values[i] ^ 0x14) == 0 ? values[i] ^ 0x28 : values[i] ^ 0x14;
            damaged.add(Bytes.of(values));
        }
        damaged.add(poll.part(0, poll.length() - 2));
        damaged.add(poll.part(1, poll.length()));
        return damaged;
    }

    static List<Bytes> noise() {
        int[] longNoise = new int[300];
        Arrays.fill(longNoise, 0x55);
        int[] ones = new int[20];
        Arrays.fill(ones, 0xFF);
        return List.of(Bytes.of(new int[20]), Bytes.of(ones), Bytes.of(longNoise));
    }

    /** What may stand before a poll without spoiling it: what every frame of the protocol ends with, and silence. */
    static List<Bytes> before(Segment segment) {
        Bytes ends = Bytes.of(segment.protocol().delimiter(), segment.protocol().delimiter());
        return segment.protocol().framing() == Protocol.Framing.AFTER_DELIMITER
                ? List.of(ends)
                : List.of(Bytes.of(0, 0), Bytes.of(0xFF, 0xFF));
    }

    /** Polls of one who is not there, then its own, without a pause. */
    static Bytes burst(Asking asking, Subject subject, int frames) {
        Bytes other = asking.pollOf(new NodeWire(subject.freeAddress(), List.of(), List.of()));
        Bytes own = asking.pollOf(subject.wire());
        int[] all = new int[frames * other.length() + own.length()];
        for (int i = 0; i < frames; i++) {
            copy(other, all, i * other.length());
        }
        copy(own, all, frames * other.length());
        return Bytes.of(all);
    }

    /** What another node would reply. */
    static Bytes replyOf(Subject subject, NodeWire other) {
        return subject.on()
                .protocol()
                .node(other)
                .encodeReply(STATUS, new int[0], 0, new int[other.controls().size()]);
    }

    private static int[] values(Bytes bytes) {
        int[] values = new int[bytes.length()];
        copy(bytes, values, 0);
        return values;
    }

    private static void copy(Bytes from, int[] to, int at) {
        for (int i = 0; i < from.length(); i++) {
            to[at + i] = from.at(i);
        }
    }
}
