package dropline.harness.capture;

import dropline.bus.clock.UartClock;
import dropline.protocol.CharacterFormat;

/** Where a frame's level changes. Every edge is measured from the frame's first start bit. */
final class BitEdges {

    /** Takes one edge. */
    @FunctionalInterface
    interface Edge {
        void at(long nanos, int level);
    }

    private BitEdges() {}

    /** Tells a frame's edges in order, the first of them down, the last of them up. */
    static void of(SentFrame frame, CharacterFormat format, UartClock clock, Edge edge) {
        int length = frame.bytes().length();
        int bits = format.bits();
        // A fault may have given the talker another clock: then its frame lasts longer or shorter than by its own.
        long span = frame.endNanos() - frame.startNanos();
        boolean byItsClock = span == clock.charsNanos(format, length);
        long total = (long) bits * length;
        int level = 1;
        for (int character = 0; character < length; character++) {
            int value = frame.bytes().at(character);
            for (int bit = 0; bit < bits; bit++) {
                int next = format.bit(value, bit);
                if (next != level) {
                    level = next;
                    long position = (long) character * bits + bit;
                    long since = byItsClock ? clock.halfBitsNanos(2 * position) : (span * position + total / 2) / total;
                    edge.at(frame.startNanos() + since, level);
                }
            }
        }
    }
}
