package dropline.bus.wire;

import dropline.protocol.CharacterFormat;
import java.util.Arrays;

/**
 * A UART's receiver that is told where a pair's level changes, edge after edge, as a logic analyser saw it. Samples as
 * a receiver of the simulator does: sixteen a bit, counted from the falling edge; a bit is what two of the three in its
 * middle say.
 */
public final class EdgeReceiver {
    private static final double SAMPLES = 16;
    /** Numbers of the three samples that count, from a bit's begin. */
    private static final int[] COUNTED = {7, 8, 9};

    private final CharacterFormat format;
    private final double bitNanos;
    private final double stopNanos;
    private final Characters out;
    private long[] edges = new long[32];
    private int count;
    private boolean isInside;
    private boolean isBroken;
    private int level = 1;

    /** Takes the characters. */
    @FunctionalInterface
    public interface Characters {
        /**
         * A character.
         *
         * @param value its data bits
         * @param good whether parity and stop bit were as they must be
         * @param endNanos when its last stop bit ends, ns
         */
        void heard(int value, boolean good, long endNanos);
    }

    /** @param bitNanos how long a bit is, ns; above 0 */
    public EdgeReceiver(double bitNanos, CharacterFormat format, Characters out) {
        if (!(bitNanos > 0)) {
            throw new IllegalArgumentException("a bit must take some time: bitNanos=" + bitNanos);
        }
        this.format = format;
        this.bitNanos = bitNanos;
        this.out = out;
        stopNanos = (format.bits() - format.stopBits() + COUNTED[1] / SAMPLES) * bitNanos;
    }

    /**
     * The level changes.
     *
     * @param nanos when, ns; not before the edge told last
     * @param next 0 or 1; the same as before says nothing
     */
    public void edge(long nanos, int next) {
        if (next == level) {
            return;
        }
        reach(nanos);
        level = next;
        if (isInside) {
            if (count == edges.length) {
                edges = Arrays.copyOf(edges, 2 * count);
            }
            edges[count++] = nanos;
        } else if (level == 0 && !isBroken) {
            isInside = true;
            edges[0] = nanos;
            count = 1;
        } else if (level == 1) {
            isBroken = false;
        }
    }

    /** No edge comes before an instant: a character whose stop bit has been seen by then is over. */
    public void reach(long nanos) {
        if (isInside && nanos > edges[0] + stopNanos) {
            finish();
        }
    }

    /** When the character under way will have been seen whole, ns; {@link Long#MAX_VALUE} where none is. */
    public long nextNanos() {
        return isInside ? edges[0] + (long) stopNanos + 1 : Long.MAX_VALUE;
    }

    /** No edge comes any more: the character under way, if any, ends as the level stands. */
    public void end() {
        if (isInside) {
            finish();
        }
    }

    private void finish() {
        isInside = false;
        if (bit(0) != 0) {
            return;
        }
        int value = 0;
        int parity = 0;
        for (int i = 0; i < format.dataBits(); i++) {
            int bit = bit(1 + i);
            value |= bit << i;
            parity ^= bit;
        }
        boolean good = levelAt(stopNanos) == 1;
        if (format.parity() != CharacterFormat.Parity.NONE) {
            parity ^= bit(1 + format.dataBits());
            good &= parity == (format.parity() == CharacterFormat.Parity.EVEN ? 0 : 1);
        }
        isBroken = levelAt(stopNanos) == 0;
        out.heard(value, good, edges[0] + Math.round(format.bits() * bitNanos));
    }

    private int bit(int index) {
        int ones = 0;
        for (int sample : COUNTED) {
            ones += levelAt((index + sample / SAMPLES) * bitNanos);
        }
        return ones >= 2 ? 1 : 0;
    }

    /** The level so long after the start edge: each edge turns it. */
    private int levelAt(double sinceNanos) {
        int passed = 0;
        while (passed < count && edges[passed] - edges[0] <= sinceNanos) {
            passed++;
        }
        return passed % 2 == 0 ? 1 : 0;
    }
}
