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
    private final UartClock clock;
    private final double bitNanos;
    private final ArrayDeque<Piece> toCome = new ArrayDeque<>();
    private final ArrayDeque<Piece> onPair = new ArrayDeque<>();
    private final List<Piece> spare = new ArrayList<>();
    private long lastEndNanos;

    /** @param cutter finds where frames end; nobody else's */
    Spoken(Segment segment, Listener cutter) {
        this.segment = segment;
        this.cutter = cutter;
        clock = UartClock.exact(segment.baud());
        bitNanos = clock.bitNanos();
    }

    /** Says bytes, from an instant on or after those said before; tells when the first begins. */
    long say(long atNanos, Bytes said) {
        long first = Math.max(atNanos, lastEndNanos);
        if (first > lastEndNanos) {
            cutter.onSilence((int) Math.min(Integer.MAX_VALUE, (first - lastEndNanos) * 10 / bitNanos));
        }
        long start = first;
        int from = 0;
        for (int i = 0; i < said.length(); i++) {
            boolean ends = !(cutter.onByte(said.at(i)) instanceof Decoded.NeedMore<Heard>);
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
