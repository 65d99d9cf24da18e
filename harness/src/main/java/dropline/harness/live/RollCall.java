package dropline.harness.live;

import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.plan.SegmentWire;
import dropline.harness.link.Link;
import dropline.protocol.FirmwareVersion;
import dropline.protocol.NodeStatus;
import dropline.protocol.NodeWire;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntConsumer;
import org.jspecify.annotations.Nullable;

/** Asks every address of a segment who is there, and holds that against the pit. */
public final class RollCall {
    private static final int TRIES = 5;

    /** What was found at an address. */
    public enum Presence {
        /** The pit has a node there, and it answers. */
        THERE,
        /** The pit has a node there, and nobody answers. */
        MISSING,
        /** Somebody answers where the pit has nobody. */
        UNEXPECTED,
        /** Something comes back, but no sound reply: two that talk at once, a wrong rate, or a bad pair. */
        GARBLED
    }

    /**
     * One address.
     *
     * @param node the pit's name for it; empty where it has none
     * @param answered how many of the tries were answered
     * @param gapNanos the least reply gap seen, ns; with what the adapter adds
     * @param status what it said of itself; null where the protocol has no room for it, or nobody answered
     * @param firmware which it says it runs; null where it does not say
     * @param measured the firmware whose timing the pit file has; null where that does not say
     */
    public record Found(
            int address,
            String node,
            Presence presence,
            int answered,
            int tries,
            long gapNanos,
            @Nullable NodeStatus status,
            @Nullable FirmwareVersion firmware,
            @Nullable FirmwareVersion measured) {

        /** Whether it runs another firmware than the one that was measured. */
        public boolean isChanged() {
            return firmware != null && measured != null && !firmware.equals(measured);
        }
    }

    private final Pit pit;
    private final Segment segment;
    private final Asking asking;
    private final long timeOutNanos;

    /** @param timeOutNanos how long to wait for an answer, ns */
    public RollCall(Pit pit, int segmentIndex, Link link, long timeOutNanos) {
        this.pit = pit;
        this.timeOutNanos = timeOutNanos;
        segment = pit.segments().get(segmentIndex);
        asking = new Asking(
                segment,
                segment.nodes().stream().map(node -> SegmentWire.of(pit, node)).toList(),
                link);
    }

    /**
     * Waits until somebody of the pit's nodes answers: boards may restart when their port opens.
     *
     * @return after how long, ns; -1 if nobody did in time
     */
    public long firstAnswer(long patienceNanos, Link link) throws IOException {
        long begun = link.now();
        while (link.now() - begun < patienceNanos) {
            for (Node node : segment.nodes()) {
                NodeWire wire = SegmentWire.of(pit, node);
                if (asking.poll(wire, timeOutNanos).replyOf(wire.address()) != null) {
                    return link.now() - begun;
                }
            }
        }
        return -1;
    }

    /**
     * Calls the roll.
     *
     * @param highest up to this address those that the pit does not name are asked too; 0 for none of them
     * @param asked hears each address before it is asked
     */
    public List<Found> call(int highest, IntConsumer asked) throws IOException {
        List<Found> found = new ArrayList<>();
        for (Node node : segment.nodes()) {
            asked.accept(node.address());
            found.add(ask(SegmentWire.of(pit, node), node.name(), TRIES));
        }
        for (int address = 1; address <= highest; address++) {
            int other = address;
            if (segment.nodes().stream().noneMatch(node -> node.address() == other)) {
                asked.accept(address);
                Found stranger = ask(new NodeWire(address, List.of(), List.of()), "", 1);
                if (stranger.presence() != Presence.MISSING) {
                    found.add(stranger);
                }
            }
        }
        return found;
    }

    private Found ask(NodeWire node, String name, int tries) throws IOException {
        int answered = 0;
        int garbled = 0;
        long gap = Long.MAX_VALUE;
        NodeStatus status = null;
        for (int i = 0; i < tries; i++) {
            Asking.Outcome outcome = asking.poll(node, timeOutNanos);
            Asking.Came reply = outcome.replyOf(node.address());
            if (reply != null) {
                answered++;
                gap = Math.min(gap, reply.startNanos() - outcome.saidUntilNanos());
                status = reply.heard().status();
            } else if (outcome.bytes() > 0) {
                garbled++;
            }
            asking.rest(Math.max(segment.silenceNanos(), segment.controller().gapNanos()) + 100_000);
        }
        FirmwareVersion firmware = answered == 0 ? null : asking.firmware(node.address(), timeOutNanos);
        Presence presence = presence(name, answered, garbled);
        return new Found(node.address(), name, presence, answered, tries, gap, status, firmware, node.firmware());
    }

    private static Presence presence(String name, int answered, int garbled) {
        if (garbled > 0 && garbled >= answered) {
            return Presence.GARBLED;
        }
        if (answered == 0) {
            return Presence.MISSING;
        }
        return name.isEmpty() ? Presence.UNEXPECTED : Presence.THERE;
    }
}
