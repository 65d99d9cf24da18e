package dropline.bus.run;

import dropline.protocol.NodeStatus;
import org.jspecify.annotations.Nullable;

/**
 * What nodes count in their replies, modulo 256, counted on; and when it is news: at every change of restarts and
 * errors, else once a second.
 */
public final class Tallies {
    /** What a reply counts loops in, ns. */
    public static final long LOOP_UNIT_NANOS = 100_000;

    private static final long EVERY_NANOS = 1_000_000_000;
    private static final int MODULUS = 0xFF;

    private final @Nullable NodeStatus[] last;
    private final long[] saidNanos;
    private final int[] boots;
    private final int[] errors;
    private final long[] refreshes;

    /** @param nodes how many */
    public Tallies(int nodes) {
        last = new NodeStatus[nodes];
        saidNanos = new long[nodes];
        boots = new int[nodes];
        errors = new int[nodes];
        refreshes = new long[nodes];
    }

    /** Counts a node's reply in, and says whether it is news. */
    public boolean isNews(int node, NodeStatus status, long atNanos) {
        NodeStatus before = last[node];
        last[node] = status;
        if (before == null) {
            boots[node] = status.bootCount();
            errors[node] = status.receiveErrors();
            refreshes[node] = status.refreshes();
        } else {
            boots[node] += status.bootCount() - before.bootCount() & MODULUS;
            errors[node] += status.receiveErrors() - before.receiveErrors() & MODULUS;
            refreshes[node] += status.refreshes() - before.refreshes() & MODULUS;
        }
        boolean news = before == null
                || status.bootCount() != before.bootCount()
                || status.receiveErrors() != before.receiveErrors()
                || atNanos - saidNanos[node] >= EVERY_NANOS;
        if (news) {
            saidNanos[node] = atNanos;
        }
        return news;
    }

    /** Restarts so far. */
    public int boots(int node) {
        return boots[node];
    }

    /** Frames received wrong so far. */
    public int errors(int node) {
        return errors[node];
    }

    /** Refreshes completed so far. */
    public long refreshes(int node) {
        return refreshes[node];
    }
}
