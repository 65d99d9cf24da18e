package dropline.protocol;

/** Reads the bit sets of {@link Destination#pick}: slot {@code s} is bit {@code s % 64} of word {@code s / 64}. */
public final class PendingSlots {

    private PendingSlots() {}

    /**
     * The first pending slot at or after {@code from} and below {@code end}, or -1.
     *
     * @param pending one bit a slot, at least {@code end} bits
     * @param from 0 or more
     */
    public static int next(long[] pending, int from, int end) {
        if (from >= end) {
            return -1;
        }
        int word = from >> 6;
        long bits = pending[word] & (-1L << from);
        int lastWord = (end - 1) >> 6;
        while (bits == 0 && word < lastWord) {
            bits = pending[++word];
        }
        if (bits == 0) {
            return -1;
        }
        int slot = (word << 6) + Long.numberOfTrailingZeros(bits);
        return slot < end ? slot : -1;
    }

    /** The first pending slot at or after {@code from}, wrapping round at {@code slots}, or -1 when none is pending. */
    public static int nextWrapping(long[] pending, int from, int slots) {
        int slot = next(pending, from, slots);
        return slot >= 0 ? slot : next(pending, 0, Math.min(from, slots));
    }
}
