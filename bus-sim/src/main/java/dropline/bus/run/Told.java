package dropline.bus.run;

import dropline.bus.clock.UartClock;
import dropline.bus.pit.Segment;
import dropline.bus.trace.TraceSink;
import dropline.bus.wire.Frame;
import dropline.protocol.Bytes;

/**
 * The characters that were on the pair last, in the order in which they were heard, and the frames that end with them.
 */
final class Told {
    private static final int KEPT = 1024;

    private final int[] values = new int[KEPT];
    private final long[] starts = new long[KEPT];
    private final Frame[] pieces = new Frame[KEPT];
    private final boolean[] clashed = new boolean[KEPT];
    private final Frame frame;
    private final UartClock clock;
    private final Segment segment;
    private long count;
    private long endNanos;
    private long heardNanos;
    private Bytes bytes = Bytes.of();

    /** @param slots the most values that a frame carries */
    Told(Segment segment, int slots) {
        this.segment = segment;
        clock = UartClock.exact(segment.baud());
        frame = new Frame(TraceSink.CONTROLLER, slots, clock, segment.format());
    }

    /** A piece's next character. */
    void add(Frame piece, int index, int value) {
        int at = (int) (count++ & (KEPT - 1));
        values[at] = value;
        starts[at] = piece.startNanos + clock.charsNanos(segment.format(), index);
        pieces[at] = piece;
        clashed[at] = piece.clashed;
        endNanos = piece.startNanos + clock.charsNanos(segment.format(), index + 1L);
        heardNanos = piece.startNanos + clock.heardNanos(segment.format(), index + 1);
    }

    /** When the last character's stop bit was over, ns. */
    long endNanos() {
        return endNanos;
    }

    /** The frame that ended with the last character, so many characters long; the next call reuses it. */
    Frame frame(int chars) {
        int length = (int) Math.max(1, Math.min(chars, Math.min(count, KEPT)));
        int first = (int) (count - length & (KEPT - 1));
        frame.time(starts[first], length, 0, 0);
        frame.endNanos = endNanos;
        frame.heardNanos = heardNanos;
        frame.driverOffNanos = endNanos;
        frame.quietSinceNanos = Math.min(starts[first], pieces[first].quietSinceNanos);
        frame.number = pieces[(int) (count - 1 & (KEPT - 1))].number;
        frame.attempt = 1;
        frame.count = 0;
        int[] said = new int[length];
        for (int i = 0; i < length; i++) {
            int at = (int) (count - length + i & (KEPT - 1));
            said[i] = values[at];
            frame.clashed |= clashed[at];
        }
        bytes = Bytes.of(said);
        return frame;
    }

    /** Whether this is the frame that was made last. */
    boolean isFrame(Frame other) {
        return other == frame;
    }

    /** Its bytes. */
    Bytes bytes() {
        return bytes;
    }
}
