package dropline.harness.measure;

import dropline.bus.pit.Layout;
import dropline.bus.trace.TraceSink;
import java.util.Arrays;

/**
 * Folds the trace of one segment into how long nobody knew the controls of each node: from the start of the run, or
 * from a restart of the node, until the controller had a whole reply from it. Every reply tells how all controls of its
 * node stand.
 */
public final class KnownMeasure implements TraceSink {
    private static final long KNOWN = -1;
    private static final long NO_CONTROLS = -2;

    private final long[] since;
    private final long[] readyNanos;
    private final long[] worstNanos;
    private final boolean[] never;

    /**
     * @param layout the pit's
     * @param segment index into the pit's segments
     */
    public KnownMeasure(Layout layout, int segment) {
        int nodes = layout.nodes().size();
        since = new long[nodes];
        readyNanos = new long[nodes];
        worstNanos = new long[nodes];
        never = new boolean[nodes];
        Arrays.fill(since, NO_CONTROLS);
        for (Layout.ControlPlace place : layout.controls()) {
            if (place.segment() == segment) {
                since[place.node()] = 0;
            }
        }
    }

    @Override
    public void reset(long atNanos, int node, long ready) {
        if (since[node] == KNOWN) {
            since[node] = atNanos;
        }
        readyNanos[node] = ready;
    }

    @Override
    public void answered(long atNanos, int node, int transaction, int attempt, long gapNanos) {
        if (since[node] >= 0 && atNanos >= readyNanos[node]) {
            worstNanos[node] = Math.max(worstNanos[node], atNanos - since[node]);
            since[node] = KNOWN;
        }
    }

    @Override
    public void ended(long atNanos) {
        for (int node = 0; node < since.length; node++) {
            if (since[node] >= 0) {
                worstNanos[node] = Math.max(worstNanos[node], atNanos - since[node]);
                never[node] = true;
            }
        }
    }

    /** Whether a node has controls on this segment. */
    public boolean hasControls(int node) {
        return since[node] != NO_CONTROLS;
    }

    /** The longest time for which the controls of a node were not known, ns; what was open at the end included. */
    public long worstNanos(int node) {
        return worstNanos[node];
    }

    /** Whether they were not known at the end. */
    public boolean unknownAtEnd(int node) {
        return never[node];
    }
}
