package dropline.bus.avr.part;

import java.util.Arrays;

/**
 * What stands at a receiver's pin: the level of a pair as edges that are known beforehand, at one wherever a gate is
 * closed, as the output of a transceiver whose receiver is off while its driver is on. Instants are cycles and parts of
 * cycles. Idle is one.
 */
public final class Line {
    private double[] edges = new double[32];
    private int count;
    private double[] gates = new double[8];
    private int gateCount;
    private int levelBefore = 1;
    private boolean closedBefore;
    private double forgotten = Double.NEGATIVE_INFINITY;

    /** The level turns; instants ascend. */
    public void edge(double cycle) {
        if (count == edges.length) {
            edges = Arrays.copyOf(edges, 2 * count);
        }
        edges[count++] = cycle;
    }

    /**
     * What was told of an instant and of those after it turns out otherwise.
     *
     * @param cycle not before {@link #forgotten}
     * @return the level before it
     */
    public int takeBack(double cycle) {
        while (count > 0 && edges[count - 1] >= cycle) {
            count--;
        }
        return levelBefore ^ count & 1;
    }

    /** Nothing can be taken back that lies before. */
    public double forgotten() {
        return forgotten;
    }

    /** The gate closes, or opens; instants ascend. */
    public void gate(double cycle) {
        if (gateCount == gates.length) {
            gates = Arrays.copyOf(gates, 2 * gateCount);
        }
        gates[gateCount++] = cycle;
    }

    /** The level at an instant. */
    int level(double cycle) {
        return isClosed(cycle) ? 1 : outside(cycle);
    }

    private int outside(double cycle) {
        int level = levelBefore;
        for (int i = 0; i < count && edges[i] <= cycle; i++) {
            level ^= 1;
        }
        return level;
    }

    private boolean isClosed(double cycle) {
        boolean closed = closedBefore;
        for (int i = 0; i < gateCount && gates[i] <= cycle; i++) {
            closed = !closed;
        }
        return closed;
    }

    /** The first instant, not before one, at which the level falls as far as is known; infinite if it does not. */
    double fallFrom(double cycle) {
        double fall = Double.POSITIVE_INFINITY;
        int level = levelBefore;
        for (int i = 0; i < count && fall == Double.POSITIVE_INFINITY; i++) {
            level ^= 1;
            if (level == 0 && edges[i] >= cycle && !isClosed(edges[i])) {
                fall = edges[i];
            }
        }
        boolean closed = closedBefore;
        for (int i = 0; i < gateCount; i++) {
            closed = !closed;
            if (!closed && gates[i] >= cycle && gates[i] < fall && outside(gates[i]) == 0) {
                fall = gates[i];
            }
        }
        return fall;
    }

    /** Nobody asks for anything before an instant any more. */
    void forgetBefore(double cycle) {
        forgotten = Math.max(forgotten, cycle);
        int gone = 0;
        while (gone < count && edges[gone] < cycle) {
            gone++;
        }
        levelBefore ^= gone & 1;
        count -= gone;
        System.arraycopy(edges, gone, edges, 0, count);
        gone = 0;
        while (gone < gateCount && gates[gone] < cycle) {
            gone++;
        }
        closedBefore ^= (gone & 1) != 0;
        gateCount -= gone;
        System.arraycopy(gates, gone, gates, 0, gateCount);
    }
}
