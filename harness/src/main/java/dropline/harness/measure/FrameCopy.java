package dropline.harness.measure;

/** Frames copied out of the log, oldest first; kinds and talkers as in {@link dropline.bus.trace.TraceSink}. */
public final class FrameCopy {
    private final int[] talkers = new int[PanelMeasure.MOST_FRAMES];
    private final int[] kinds = new int[PanelMeasure.MOST_FRAMES];
    private final int[] nodes = new int[PanelMeasure.MOST_FRAMES];
    private final int[] transactions = new int[PanelMeasure.MOST_FRAMES];
    private final long[] starts = new long[PanelMeasure.MOST_FRAMES];
    private final long[] ends = new long[PanelMeasure.MOST_FRAMES];
    private final boolean[] clashed = new boolean[PanelMeasure.MOST_FRAMES];
    private int count;

    void take(FrameLog log, long sinceNanos) {
        count = log.framesSince(sinceNanos, PanelMeasure.MOST_FRAMES);
        for (int n = 0; n < count; n++) {
            int i = log.back(count - n);
            talkers[n] = log.talkers[i];
            kinds[n] = log.kinds[i];
            nodes[n] = log.nodes[i];
            transactions[n] = log.transactions[i];
            starts[n] = log.starts[i];
            ends[n] = log.ends[i];
            clashed[n] = log.clashed[i];
        }
    }

    public int count() {
        return count;
    }

    public int talker(int frame) {
        return talkers[frame];
    }

    public int kind(int frame) {
        return kinds[frame];
    }

    public int node(int frame) {
        return nodes[frame];
    }

    public int transaction(int frame) {
        return transactions[frame];
    }

    public long startNanos(int frame) {
        return starts[frame];
    }

    public long endNanos(int frame) {
        return ends[frame];
    }

    public boolean clashed(int frame) {
        return clashed[frame];
    }
}
