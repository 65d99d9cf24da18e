package dropline.bus.wire;

/**
 * A running count of the characters on the segment, by time. Everyone hears everything, but lazily: a node works out
 * from these counts what its buffers held only when it is addressed.
 *
 * <p>Remembers the last 4,096 transmissions; asked about earlier instants it answers for the oldest it knows.
 */
public final class Traffic {
    private static final int KEPT = 4096;
    private static final int MEMO_BITS = 4;
    private static final int MEMOS = 1 << MEMO_BITS;
    private static final int MEMO_SHIFT = Long.SIZE - MEMO_BITS;
    private static final long MIXING = 0x9E3779B97F4A7C15L;

    private final long[] start = new long[KEPT];
    private final long[] charNanos = new long[KEPT];
    private final int[] chars = new int[KEPT];
    private final long[] before = new long[KEPT];
    private final long[] askedAt = new long[1 + MEMOS];
    private final long[] askedAfter = new long[1 + MEMOS];
    private final long[] told = new long[1 + MEMOS];
    private int newest = -1;
    private long transmissions;
    private long total;

    /** Counts a transmission's characters; starts never run backwards. */
    public void add(Frame frame) {
        newest = (newest + 1) & (KEPT - 1);
        start[newest] = frame.startNanos;
        charNanos[newest] = frame.charNanos();
        chars[newest] = frame.chars;
        before[newest] = total;
        total += frame.chars;
        transmissions++;
    }

    /** Characters whose stop bit was sampled by this instant. */
    public long completed(long atNanos) {
        return count(atNanos, false);
    }

    /** Characters whose start bit had begun by this instant. */
    public long begun(long atNanos) {
        return count(atNanos, true);
    }

    /** Many nodes that block as long as one another ask the same at once. */
    private long count(long atNanos, boolean begun) {
        int memo = begun ? 0 : 1 + (int) (atNanos * MIXING >>> MEMO_SHIFT);
        if (askedAt[memo] != atNanos || askedAfter[memo] != transmissions) {
            askedAt[memo] = atNanos;
            askedAfter[memo] = transmissions;
            told[memo] = counted(atNanos, begun);
        }
        return told[memo];
    }

    private long counted(long atNanos, boolean begun) {
        int known = (int) Math.min(transmissions, KEPT);
        int back = backTo(atNanos, known);
        if (back == known) {
            return known == 0 ? 0 : before[place(known - 1)];
        }
        int i = place(back);
        long since = atNanos - start[i];
        long sampled = since + charNanos[i] / 20;
        long passed = begun ? since / charNanos[i] + 1 : sampled / charNanos[i];
        return before[i] + Math.min(chars[i], passed);
    }

    /** How many transmissions began after an instant; in wider and wider strides first, since it is mostly a few. */
    private int backTo(long atNanos, int known) {
        int after = -1;
        int notAfter = 0;
        while (notAfter < known && start[place(notAfter)] > atNanos) {
            after = notAfter;
            notAfter = 2 * notAfter + 1;
        }
        notAfter = Math.min(notAfter, known);
        while (notAfter - after > 1) {
            int middle = (after + notAfter) >>> 1;
            if (start[place(middle)] > atNanos) {
                after = middle;
            } else {
                notAfter = middle;
            }
        }
        return notAfter;
    }

    private int place(int back) {
        return (newest - back) & (KEPT - 1);
    }
}
