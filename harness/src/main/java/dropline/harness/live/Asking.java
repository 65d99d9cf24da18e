package dropline.harness.live;

import dropline.bus.clock.UartClock;
import dropline.bus.pit.Segment;
import dropline.harness.link.Arrival;
import dropline.harness.link.Link;
import dropline.protocol.Bytes;
import dropline.protocol.Decoded;
import dropline.protocol.FirmwareVersion;
import dropline.protocol.Heard;
import dropline.protocol.Listener;
import dropline.protocol.NodeWire;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Says something on a pair, and takes note of what comes of it until a deadline. */
public final class Asking {
    private static final int[] NOTHING = {};
    private static final long[] NO_VALUES = {};
    private static final FirmwareVersion UNSAID = new FirmwareVersion(0, 0);

    /** A pause after which a node may be spoken to again, beyond what the segment asks for, ns. */
    private static final long AFTER_NANOS = 100_000;

    private final Segment segment;
    private final Link link;
    private final Listener listener;
    private final UartClock clock;
    private final long silenceNanos;
    private long lastByteNanos;

    /**
     * @param segment says how one speaks there
     * @param nodes that may answer
     * @throws UnsupportedOperationException where the protocol knows lengths only
     */
    public Asking(Segment segment, List<NodeWire> nodes, Link link) {
        this.segment = segment;
        this.link = link;
        clock = UartClock.exact(segment.baud());
        silenceNanos = segment.silenceNanos();
        listener = segment.protocol().listener(nodes, segment.baud(), segment.format());
        listener.onSilence(Integer.MAX_VALUE);
        lastByteNanos = link.now();
    }

    /**
     * A frame that came.
     *
     * @param startNanos its first start bit by the link's clock: as exact as the link is
     * @param endNanos its last character was there
     */
    public record Came(Heard heard, long startNanos, long endNanos) {}

    /**
     * What came of what was said.
     *
     * @param saidUntilNanos the end of its last stop bit by the link's clock
     * @param frames that came until the deadline, or until the one that was waited for
     * @param bytes how many came, those of frames among them
     * @param rejected how many came that were part of no sound frame
     */
    public record Outcome(long saidUntilNanos, List<Came> frames, int bytes, int rejected) {
        /** The reply of a node, or null. */
        public @Nullable Came replyOf(int address) {
            return frames.stream()
                    .filter(came -> came.heard().kind() == Heard.Kind.REPLY
                            && came.heard().address() == address)
                    .findFirst()
                    .orElse(null);
        }
    }

    /** The plain poll of a node. */
    public Bytes pollOf(NodeWire node) {
        return segment.protocol().node(node).encodeRequest(0, NOTHING, 0, NO_VALUES);
    }

    /** Polls a node, and waits for its reply. */
    public Outcome poll(NodeWire node, long timeOutNanos) throws IOException {
        return say(pollOf(node), node.address(), timeOutNanos);
    }

    /** Asks a node which firmware it runs; null where it does not say, or the protocol has no such question. */
    public @Nullable FirmwareVersion firmware(int address, long timeOutNanos) throws IOException {
        Bytes question = segment.protocol().askFirmware(address);
        if (question == null) {
            return null;
        }
        Came reply = say(question, address, timeOutNanos).replyOf(address);
        rest(Math.max(segment.silenceNanos(), segment.controller().gapNanos()) + AFTER_NANOS);
        FirmwareVersion said = reply == null ? null : reply.heard().firmware();
        return said == null || said.equals(UNSAID) ? null : said;
    }

    /**
     * Says something.
     *
     * @param awaited the address whose reply ends the waiting; -1 to wait until the deadline in any case
     * @param timeOutNanos how long to wait after its last stop bit, ns
     */
    public Outcome say(Bytes bytes, int awaited, long timeOutNanos) throws IOException {
        List<Came> frames = new ArrayList<>();
        int came = 0;
        int rejected = 0;
        long quietFor = link.now() - lastByteNanos;
        listen(listener.onSilence(tenths(quietFor)), 0, frames);
        for (int i = 0; i < bytes.length(); i++) {
            listen(listener.onByte(bytes.at(i)), 0, new ArrayList<>());
        }
        long sent = link.send(bytes.toArray(), 0, bytes.length());
        long until = sent + clock.charsNanos(segment.format(), bytes.length());
        lastByteNanos = until;
        if (silenceNanos > 0) {
            listen(listener.onSilence(tenths(silenceNanos)), 0, new ArrayList<>());
        }
        frames.clear();
        long deadline = until + timeOutNanos;
        boolean open = false;
        while (!isThere(frames, awaited) && (link.now() < deadline || open)) {
            long wake = open ? lastByteNanos + Math.max(silenceNanos, 1) : deadline;
            Arrival arrival = link.await(wake);
            if (arrival instanceof Arrival.Received received) {
                int length = received.bytes().length();
                came += length;
                rejected += take(received, frames);
                open = silenceNanos > 0;
            } else if (open && link.now() >= wake) {
                open = false;
                rejected += listen(listener.onSilence(tenths(link.now() - lastByteNanos)), lastByteNanos, frames);
            }
        }
        return new Outcome(until, List.copyOf(frames), came, rejected);
    }

    /** Waits, and lets go of what comes. */
    public void rest(long nanos) throws IOException {
        long until = link.now() + nanos;
        while (link.now() < until) {
            Arrival arrival = link.await(until);
            if (arrival instanceof Arrival.Received received) {
                int unused = take(received, new ArrayList<>());
            }
        }
    }

    private static boolean isThere(List<Came> frames, int awaited) {
        return frames.stream()
                .anyMatch(came ->
                        came.heard().kind() == Heard.Kind.REPLY && came.heard().address() == awaited);
    }

    private int take(Arrival.Received received, List<Came> frames) {
        Bytes bytes = received.bytes();
        long first = received.atNanos() - clock.heardNanos(segment.format(), bytes.length());
        int rejected = 0;
        if (first > lastByteNanos) {
            rejected += listen(listener.onSilence(tenths(first - lastByteNanos)), lastByteNanos, frames);
        }
        for (int i = 0; i < bytes.length(); i++) {
            int after = bytes.length() - 1 - i;
            rejected += listen(
                    listener.onByte(bytes.at(i)),
                    received.atNanos() - clock.charsNanos(segment.format(), after),
                    frames);
        }
        lastByteNanos = received.atNanos();
        return rejected;
    }

    private int listen(Decoded<Heard> first, long heardNanos, List<Came> frames) {
        int rejected = 0;
        Decoded<Heard> decoded = first;
        while (!(decoded instanceof Decoded.NeedMore<Heard>)) {
            if (decoded instanceof Decoded.Complete<Heard> complete) {
                long start = heardNanos - clock.heardNanos(segment.format(), complete.bytesUsed());
                frames.add(new Came(complete.frame(), start, heardNanos));
            } else if (decoded instanceof Decoded.Rejected<Heard> wrong) {
                rejected += wrong.bytesDropped();
            }
            decoded = listener.more();
        }
        return rejected;
    }

    private int tenths(long nanos) {
        return (int) Math.max(0, Math.min(Integer.MAX_VALUE, Math.round(nanos * 10 / clock.bitNanos())));
    }
}
