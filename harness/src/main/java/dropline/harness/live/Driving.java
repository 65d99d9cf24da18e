package dropline.harness.live;

import dropline.bus.clock.UartClock;
import dropline.bus.host.StateBlock;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.plan.SegmentWire;
import dropline.bus.run.ControllerRun;
import dropline.bus.trace.TraceSink;
import dropline.bus.wire.Frame;
import dropline.harness.link.Arrival;
import dropline.harness.link.Link;
import dropline.harness.replay.Both;
import dropline.harness.replay.Progress;
import dropline.harness.replay.Source;
import dropline.protocol.Bytes;
import dropline.protocol.Decoded;
import dropline.protocol.Heard;
import dropline.protocol.Listener;
import dropline.protocol.NodeStatus;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;

/**
 * The controller of a segment on a real pair, or on one that is played: what is recorded is sent in real time, and what
 * the nodes answer is heard.
 */
public final class Driving {
    /** It looks at least so often what is to be sent, ns. */
    private static final long LOOK_NANOS = 1_000_000;

    private final Segment segment;
    private final Link link;
    private final Listener listener;
    private final ControllerRun run;
    private final List<Integer> addresses = new ArrayList<>();
    private final StateBlock block = new StateBlock();
    private final UartClock clock;
    private final @Nullable Acknowledgements acknowledgements;
    private final long silenceNanos;
    private long originNanos;
    private long lastByteNanos;
    private boolean openEnded;
    private long latestNanos;
    private long outages;
    private long strangers;
    private @Nullable IOException failed;

    /**
     * @param segmentIndex index into {@link Pit#segments()}
     * @param sink receives the segment's events in order
     * @throws UnsupportedOperationException where the segment's protocol knows lengths only
     */
    public Driving(Pit pit, int segmentIndex, long seed, TraceSink sink, Link link) {
        segment = pit.segments().get(segmentIndex);
        this.link = link;
        clock = UartClock.exact(segment.baud());
        silenceNanos = segment.silenceNanos();
        listener = segment.protocol()
                .listener(
                        segment.nodes().stream()
                                .map(node -> SegmentWire.of(pit, node))
                                .toList(),
                        segment.baud(),
                        segment.format());
        listener.onSilence(Integer.MAX_VALUE);
        Layout.of(pit).nodes().forEach(place -> addresses.add(place.node().address()));
        acknowledgements = segment.protocol().acknowledgesState() ? new Acknowledgements(pit) : null;
        TraceSink all = acknowledgements == null ? sink : new Both(sink, acknowledgements);
        run = new ControllerRun(pit, segmentIndex, seed, all, this::say);
    }

    /**
     * Drives until all is played, or until told to stop.
     *
     * @return how long that was, ns
     * @throws IOException if the link is gone for good, or the recording cannot be read, with words for the person
     */
    public long drive(Source source, BooleanSupplier stop, Progress progress) throws IOException {
        originNanos = link.now();
        boolean more = true;
        while (more && !stop.getAsBoolean()) {
            long wake = Math.min(run.nextNanos() + 1, now() + LOOK_NANOS);
            if (openEnded) {
                wake = Math.min(wake, lastByteNanos + silenceNanos);
            }
            Arrival arrival = link.await(originNanos + wake);
            if (arrival != null) {
                take(arrival, source);
            } else if (openEnded && now() >= lastByteNanos + silenceNanos) {
                silence(now() - lastByteNanos);
            }
            more = advance(Math.min(known(), source.endNanos()), source) && run.reachedNanos() < source.endNanos();
            progress.reached(run.reachedNanos(), source.shareAt(run.reachedNanos()));
            if (failed != null) {
                throw failed;
            }
        }
        run.end();
        return run.reachedNanos();
    }

    /** Up to when it is known what happened: of a frame that ends by silence, not beyond its last character. */
    private long known() {
        return openEnded ? Math.min(lastByteNanos, now()) : now();
    }

    private long now() {
        return link.now() - originNanos;
    }

    private boolean advance(long toNanos, Source source) throws IOException {
        if (toNanos <= run.reachedNanos()) {
            return true;
        }
        boolean more = source.feed().fill(block, toNanos);
        block.dropMoves();
        run.offer(block);
        latestNanos = Math.max(latestNanos, run.advanceTo(toNanos));
        return more;
    }

    private void say(Frame frame, Bytes bytes) {
        heard(bytes, frame.startNanos, null);
        lastByteNanos = frame.endNanos;
        try {
            link.send(bytes.toArray(), 0, bytes.length());
        } catch (IOException gone) {
            failed = gone;
        }
    }

    private void take(Arrival arrival, Source source) throws IOException {
        if (arrival instanceof Arrival.Received received) {
            long at = Math.max(run.reachedNanos(), received.atNanos() - originNanos);
            advance(at, source);
            long span = clock.heardNanos(segment.format(), received.bytes().length());
            heard(received.bytes(), at - span, at);
            lastByteNanos = at;
        } else if (arrival instanceof Arrival.Lost) {
            outages++;
        }
    }

    private void heard(Bytes bytes, long startNanos, @Nullable Long heardNanos) {
        if (startNanos > lastByteNanos) {
            understand(listener.onSilence(tenths(startNanos - lastByteNanos)), lastByteNanos);
        }
        for (int i = 0; i < bytes.length(); i++) {
            understand(listener.onByte(bytes.at(i)), heardNanos);
        }
        openEnded = silenceNanos > 0;
    }

    private void silence(long nanos) {
        openEnded = false;
        understand(listener.onSilence(tenths(nanos)), lastByteNanos);
    }

    private int tenths(long nanos) {
        return (int) Math.min(Integer.MAX_VALUE, Math.round(nanos * 10 / clock.bitNanos()));
    }

    private void understand(Decoded<Heard> first, @Nullable Long heardNanos) {
        Decoded<Heard> decoded = first;
        while (!(decoded instanceof Decoded.NeedMore<Heard>)) {
            if (heardNanos != null
                    && decoded instanceof Decoded.Complete<Heard> complete
                    && complete.frame().kind() == Heard.Kind.REPLY) {
                answered(complete.frame(), complete.bytesUsed(), heardNanos);
            }
            decoded = listener.more();
        }
    }

    private void answered(Heard reply, int chars, long heardNanos) {
        int awaited = run.awaited();
        if (awaited >= 0 && (reply.address() == 0 || reply.address() == addresses.get(awaited))) {
            long at = Math.max(run.reachedNanos(), heardNanos);
            NodeStatus status = reply.status();
            if (acknowledgements != null && status != null) {
                acknowledgements.replied(at, awaited, status.lastSequence());
            }
            run.answered(at, reply, chars);
        } else {
            strangers++;
        }
    }

    /** What boards acknowledged, and when; null where the protocol has no room for that. */
    public @Nullable Acknowledgements acknowledgements() {
        return acknowledgements;
    }

    /** By how much the latest of its frames was late, ns: the host's doing. */
    public long latestNanos() {
        return latestNanos;
    }

    /** How often the link broke off. */
    public long outages() {
        return outages;
    }

    /** Replies that came when nobody, or somebody else, was asked. */
    public long strangers() {
        return strangers;
    }

    /** The digest of the trace. */
    public long digest() {
        return run.digest();
    }
}
