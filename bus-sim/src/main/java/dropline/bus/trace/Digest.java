package dropline.bus.trace;

import dropline.bus.chance.Draws;

/** A 64-bit mix over integers, order included; equal traces have equal digests. */
public final class Digest {
    private long state = 0x6A09E667F3BCC908L;

    /** Takes one integer. */
    public void add(long value) {
        state = Long.rotateLeft(state, 23) * 0x9FB21C651E98DF25L ^ value;
    }

    /** The digest of everything taken so far. */
    public long value() {
        return Draws.mix(state);
    }

    /** Combines digests in order. */
    public static long combine(long first, long second) {
        return Draws.mix(Long.rotateLeft(first, 17) * 0x9FB21C651E98DF25L ^ second);
    }
}
