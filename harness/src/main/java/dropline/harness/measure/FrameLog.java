package dropline.harness.measure;

import java.util.Arrays;

/** The latest frames on a segment, and the latest mishaps, for looking back from a worst moment. */
final class FrameLog {
    /** Frames remembered; a power of two. */
    static final int CAPACITY = 256;

    static final int TIME_OUT = 0;
    static final int CLASH = 1;
    static final int OVERRUN = 2;

    private static final int MASK = CAPACITY - 1;
    private static final int NONE = -1;

    final int[] talkers = new int[CAPACITY];
    final int[] kinds = new int[CAPACITY];
    final int[] nodes = new int[CAPACITY];
    final int[] transactions = new int[CAPACITY];
    final long[] starts = new long[CAPACITY];
    final long[] ends = new long[CAPACITY];
    final boolean[] clashed = new boolean[CAPACITY];

    private final long[] mishapNanos = new long[CAPACITY];
    private final int[] mishapKinds = new int[CAPACITY];
    private final int[] mishapNodes = new int[CAPACITY];
    private final long charPicos;
    /** By talker + 1: number of its frame under way, and whether a clash awaits its next one. */
    private final int[] underWay;

    private final boolean[] clashAwaits;
    private int count;
    private int mishaps;

    /** {@code charPicos} is the length of a character, in 10^-12 s. */
    FrameLog(int allNodes, long charPicos) {
        this.charPicos = charPicos;
        underWay = new int[allNodes + 1];
        clashAwaits = new boolean[allNodes + 1];
        Arrays.fill(underWay, NONE);
    }

    void started(long atNanos, int talker, int kind, int node, int transaction, int chars) {
        int i = count & MASK;
        talkers[i] = talker;
        kinds[i] = kind;
        nodes[i] = node;
        transactions[i] = transaction;
        starts[i] = atNanos;
        ends[i] = atNanos + chars * charPicos / 1000;
        clashed[i] = clashAwaits[talker + 1];
        clashAwaits[talker + 1] = false;
        underWay[talker + 1] = count++;
    }

    void ended(long atNanos, int talker) {
        int n = underWay[talker + 1];
        if (n != NONE && count - n <= CAPACITY) {
            ends[n & MASK] = atNanos;
        }
        underWay[talker + 1] = NONE;
    }

    void clash(long atNanos, int talker, int other) {
        mark(talker);
        mark(other);
        mishap(atNanos, CLASH, talker);
    }

    private void mark(int talker) {
        int n = underWay[talker + 1];
        if (n == NONE) {
            clashAwaits[talker + 1] = true;
        } else if (count - n <= CAPACITY) {
            clashed[n & MASK] = true;
        }
    }

    void mishap(long atNanos, int kind, int node) {
        mishapNanos[mishaps & MASK] = atNanos;
        mishapKinds[mishaps & MASK] = kind;
        mishapNodes[mishaps++ & MASK] = node;
    }

    /** Mishaps of a kind since an instant; clashes of the whole segment, others of one node. */
    int mishapsSince(long nanos, int kind, int node) {
        int found = 0;
        for (int n = mishaps - 1; n >= 0 && mishaps - n <= CAPACITY && mishapNanos[n & MASK] >= nanos; n--) {
            if (mishapKinds[n & MASK] == kind && (kind == CLASH || mishapNodes[n & MASK] == node)) {
                found++;
            }
        }
        return found;
    }

    /** How many of the latest frames ended at or after an instant; at most {@code limit}. */
    int framesSince(long nanos, int limit) {
        int found = 0;
        while (found < limit && found < count && ends[(count - 1 - found) & MASK] >= nanos) {
            found++;
        }
        return found;
    }

    /** Place in the arrays of the frame that is this many before the next. */
    int back(int frames) {
        return (count - frames) & MASK;
    }
}
