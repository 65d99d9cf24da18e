package dropline.harness.measure;

import java.util.stream.IntStream;
import java.util.stream.LongStream;

/** What went wrong on a segment, by the node concerned: indices are those of the pit's layout. */
public final class Mishaps {
    private final long[] timeOuts;
    private final long[] overruns;
    private final long[] clashes;

    Mishaps(int nodes) {
        timeOuts = new long[nodes];
        overruns = new long[nodes];
        clashes = new long[nodes];
    }

    void countTimeOut(int node) {
        timeOuts[node]++;
    }

    void countOverrun(int node) {
        overruns[node]++;
    }

    /** A clash concerns every node that took part in it by talking. */
    void countClash(int talker, int other) {
        if (talker >= 0) {
            clashes[talker]++;
        }
        if (other >= 0) {
            clashes[other]++;
        }
    }

    public long overruns(int node) {
        return overruns[node];
    }

    public long clashes(int node) {
        return clashes[node];
    }

    /** Tries without a good reply that neither an overrun nor a clash at the node accounts for. */
    public long unexplained(int node) {
        return Math.max(0, timeOuts[node] - overruns[node] - clashes[node]);
    }

    /** The node with most overruns, the first of several. */
    public int mostOverrun() {
        return most(overruns);
    }

    /** The node with most clashes, the first of several. */
    public int mostClashing() {
        return most(clashes);
    }

    /** The node with most tries that nothing else accounts for, the first of several. */
    public int mostSilent() {
        return most(unexplained().toArray());
    }

    /** Those tries of all nodes. */
    public LongStream unexplained() {
        return IntStream.range(0, timeOuts.length).mapToLong(this::unexplained);
    }

    private static int most(long[] counts) {
        int most = 0;
        for (int node = 1; node < counts.length; node++) {
            if (counts[node] > counts[most]) {
                most = node;
            }
        }
        return most;
    }
}
