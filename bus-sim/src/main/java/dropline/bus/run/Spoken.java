package dropline.bus.run;

import dropline.bus.clock.UartClock;
import dropline.bus.pit.Segment;
import dropline.bus.trace.TraceSink;
import dropline.bus.wire.Frame;
import dropline.protocol.Bytes;
import dropline.protocol.Decoded;
import dropline.protocol.Heard;
import dropline.protocol.Listener;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a controller outside has on the pair: its bytes in pieces, each a transmission that ends where a frame may end,
 * so that a node has a frame when it is over however much follows.
 */
final class Spoken {
    /** A piece on the pair. */
    private static final class Piece {
        private final Frame frame;
        private Bytes bytes = Bytes.of();

        Piece(Frame frame) {
            this.frame = frame;
        }
    }

    private final Segment segment;
    private final Listener cutter;
    private UartClock clock;
    private double bitNanos;
    private final ArrayDeque<Piece> toCome = new ArrayDeque<>();
    private final ArrayDeque<Piece> onPair = new ArrayDeque<>();
    private final List<Piece> spare = new ArrayList<>();
    private long lastEndNanos;
    private boolean lastIsReply;
    private @Nullable Frame last;
    private @Nullable Frame replyBefore;

    /** @param cutter finds where frames end; nobody else's */
    Spoken(Segment segment, Listener cutter) {
        this.segment = segment;
        this.cutter = cutter;
        clock = UartClock.exact(segment.baud());
        bitNanos = clock.bitNanos();
    }

    /** What is said from now on has its bits from another clock. */
    void tune(UartClock other) {
        clock = other;
        bitNanos = other.bitNanos();
        spare.clear();
    }

    /** Says bytes, from an instant on or after those said before; tells when the first begins. */
    long say(long atNanos, Bytes said) {
        long first = Math.max(atNanos, lastEndNanos);
        if (first > lastEndNanos) {
            int tenths = (int) Math.min(Integer.MAX_VALUE, (first - lastEndNanos) * 10 / bitNanos);
            lastIsReply |= isReply(cutter.onSilence(tenths));
        }
        replyBefore = lastIsReply ? last : null;
        long start = first;
        int from = 0;
        for (int i = 0; i < said.length(); i++) {
            Decoded<Heard> decoded = cutter.onByte(said.at(i));
            lastIsReply = isReply(decoded);
            boolean ends = !(decoded instanceof Decoded.NeedMore<Heard>);
            while (!(cutter.more() instanceof Decoded.NeedMore<Heard>)) {
                ends = true;
            }
            if (ends || i == said.length() - 1) {
                add(start, said.part(from, i + 1));
                start = lastEndNanos;
                from = i + 1;
            }
        }
        return first;
    }

    private static boolean isReply(Decoded<Heard> decoded) {
        return decoded instanceof Decoded.Complete<Heard> complete
                && complete.frame().kind() == Heard.Kind.REPLY;
    }

    /** The piece before what was said last, if it ended with a reply: somebody plays a node there. */
    @Nullable
    Frame replyBefore() {
        return replyBefore;
    }

    private void add(long atNanos, Bytes bytes) {
        Piece piece = spare.isEmpty()
                ? new Piece(new Frame(TraceSink.CONTROLLER, 0, clock, segment.format()))
                : spare.remove(spare.size() - 1);
        piece.bytes = bytes;
        piece.frame.kind = Frame.BABBLE;
        piece.frame.node = TraceSink.ALL;
        piece.frame.transaction = 0;
        piece.frame.time(atNanos, bytes.length(), 0, 0);
        lastEndNanos = piece.frame.endNanos;
        last = piece.frame;
        toCome.add(piece);
    }

    /** When the next piece begins, ns; {@link Long#MAX_VALUE} if all have. */
    long nextNanos() {
        return toCome.isEmpty() ? Long.MAX_VALUE : toCome.getFirst().frame.startNanos;
    }

    /** Begins the next piece. */
    Frame next() {
        Piece piece = toCome.removeFirst();
        onPair.addLast(piece);
        return piece.frame;
    }

    /** The bytes of a piece. */
    Bytes of(Frame frame) {
        for (Piece piece : onPair) {
            if (piece.frame == frame) {
                return piece.bytes;
            }
        }
        throw new IllegalStateException("a piece must be on the pair: startNanos=" + frame.startNanos);
    }

    /** End of the last stop bit of all that was said. */
    long lastEndNanos() {
        return lastEndNanos;
    }

    /** Lets go of pieces that nothing can ask for any more. */
    void forget(long beforeNanos) {
        while (!onPair.isEmpty() && onPair.getFirst().frame.heard && onPair.getFirst().frame.endNanos < beforeNanos) {
            spare.add(onPair.removeFirst());
        }
    }
}
