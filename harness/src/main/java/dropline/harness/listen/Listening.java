package dropline.harness.listen;

import dropline.bus.clock.UartClock;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.plan.SegmentWire;
import dropline.harness.link.Arrival;
import dropline.protocol.Bytes;
import dropline.protocol.Decoded;
import dropline.protocol.Heard;
import dropline.protocol.Listener;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What is said on a pair, as it comes: whose turn it is, who answers how soon, what is no frame at all. Memory does not
 * grow with time.
 */
public final class Listening {
    /** No frame is longer. */
    private static final int RECENT = 1024;

    private final Segment segment;
    private final Listener listener;
    private final UartClock clock;
    private final List<Hearer> hearers;
    private final int[] recent = new int[RECENT];
    private final Map<Integer, NodeTally> nodes = new TreeMap<>();
    private long bytes;
    private long sound;
    private long broadcasts;
    private long strayReplies;
    private long overrun;
    private long troubles;
    private long lastByteNanos = -1;
    private long firstByteNanos = -1;
    private int asked = -1;
    private long askedEndNanos;

    /**
     * @param hearers take the frames
     * @throws UnsupportedOperationException where the segment's protocol knows lengths only
     */
    public Listening(Pit pit, int segmentIndex, List<? extends Hearer> hearers) {
        this.hearers = List.copyOf(hearers);
        segment = pit.segments().get(segmentIndex);
        clock = UartClock.exact(segment.baud());
        listener = segment.protocol()
                .listener(
                        segment.nodes().stream()
                                .map(node -> SegmentWire.of(pit, node))
                                .toList(),
                        segment.baud(),
                        segment.format());
        segment.nodes().forEach(node -> nodes.put(node.address(), new NodeTally(node.address(), node.name())));
    }

    /** Takes what came over the link. */
    public void take(Arrival arrival) {
        if (arrival instanceof Arrival.Received received) {
            take(received);
        } else if (arrival instanceof Arrival.Overrun lost) {
            overrun += lost.bytes();
        }
    }

    private void take(Arrival.Received received) {
        Bytes came = received.bytes();
        long first = received.atNanos() - clock.heardNanos(segment.format(), came.length());
        if (lastByteNanos < 0) {
            firstByteNanos = first;
            hear(listener.onSilence(Integer.MAX_VALUE), first);
        } else if (first > lastByteNanos) {
            hear(listener.onSilence(tenths(first - lastByteNanos)), lastByteNanos);
        }
        for (int i = 0; i < came.length(); i++) {
            int after = came.length() - 1 - i;
            recent[(int) (bytes++ & RECENT - 1)] = came.at(i);
            hear(listener.onByte(came.at(i)), received.atNanos() - clock.charsNanos(segment.format(), after));
        }
        lastByteNanos = received.atNanos();
    }

    /** Nothing has come until now: a frame that ends by silence may have ended. */
    public void quiet(long nowNanos) {
        if (lastByteNanos >= 0 && nowNanos > lastByteNanos) {
            hear(listener.onSilence(tenths(nowNanos - lastByteNanos)), lastByteNanos);
        }
    }

    private int tenths(long nanos) {
        return (int) Math.min(Integer.MAX_VALUE, Math.round(nanos * 10 / clock.bitNanos()));
    }

    private void hear(Decoded<Heard> first, long endNanos) {
        Decoded<Heard> decoded = first;
        while (!(decoded instanceof Decoded.NeedMore<Heard>)) {
            if (decoded instanceof Decoded.Complete<Heard> complete) {
                frame(complete.frame(), endNanos, complete.bytesUsed());
            } else if (decoded instanceof Decoded.Rejected<Heard> wrong) {
                troubles += wrong.bytesDropped() > 0 ? 1 : 0;
            }
            decoded = listener.more();
        }
    }

    private void frame(Heard heard, long endNanos, int chars) {
        sound += chars;
        long start = endNanos - clock.heardNanos(segment.format(), chars);
        long since = Math.max(0, start - firstByteNanos);
        long until = since + clock.charsNanos(segment.format(), chars);
        Bytes said = recent(chars);
        hearers.forEach(hearer -> hearer.frame(heard, since, until, said));
        switch (heard.kind()) {
            case BROADCAST -> {
                broadcasts++;
                asked = -1;
            }
            case REQUEST -> {
                troubles += asked >= 0 ? 1 : 0;
                of(heard.address()).asked(start);
                asked = heard.address();
                askedEndNanos = start + clock.charsNanos(segment.format(), chars);
            }
            case REPLY -> {
                if (heard.address() == asked) {
                    NodeTally node = of(heard.address());
                    int restarts = node.restarts();
                    troubles += node.answered(start, start - askedEndNanos, heard.status()) ? 1 : 0;
                    troubles += node.restarts() > Math.max(0, restarts) ? 1 : 0;
                } else {
                    strayReplies++;
                    troubles++;
                }
                asked = -1;
            }
        }
    }

    private Bytes recent(int count) {
        int[] last = new int[Math.min(count, RECENT)];
        for (int i = 0; i < last.length; i++) {
            last[i] = recent[(int) (bytes - last.length + i & RECENT - 1)];
        }
        return Bytes.of(last);
    }

    /** Nothing more comes. */
    public void end() {
        hearers.forEach(hearer -> hearer.ended(spanNanos()));
    }

    private NodeTally of(int address) {
        return nodes.computeIfAbsent(address, unknown -> new NodeTally(address, ""));
    }

    /** What was heard of each address, in order. */
    public Collection<NodeTally> nodes() {
        return nodes.values();
    }

    public long bytes() {
        return bytes;
    }

    /**
     * What has gone wrong so far: polls without an answer, restarts, stray replies, displays that come to a stop, what
     * is no frame.
     */
    public long troubles() {
        return troubles;
    }

    /** Bytes that were part of no sound frame, or of none that has ended yet. */
    public long unsound() {
        return bytes - sound;
    }

    public long broadcasts() {
        return broadcasts;
    }

    /** Replies of somebody who was not asked. */
    public long strayReplies() {
        return strayReplies;
    }

    /** Bytes that came faster than they were taken. */
    public long overrun() {
        return overrun;
    }

    /** From the first byte to the last, ns. */
    public long spanNanos() {
        return lastByteNanos < 0 ? 0 : lastByteNanos - firstByteNanos;
    }
}
