package dropline.harness.listen;

import dropline.protocol.NodeStatus;
import org.jspecify.annotations.Nullable;

/** What was heard of one address. */
public final class NodeTally {
    private final int address;
    private final String name;
    private long asked;
    private long answered;
    private long leastGapNanos = Long.MAX_VALUE;
    private long mostGapNanos;
    private long sumGapNanos;
    private long firstAskedNanos = -1;
    private long lastAskedNanos;
    private long longestRoundNanos;
    private @Nullable NodeStatus first;
    private @Nullable NodeStatus last;

    NodeTally(int address, String name) {
        this.address = address;
        this.name = name;
    }

    void asked(long atNanos) {
        asked++;
        if (firstAskedNanos < 0) {
            firstAskedNanos = atNanos;
        } else {
            longestRoundNanos = Math.max(longestRoundNanos, atNanos - lastAskedNanos);
        }
        lastAskedNanos = atNanos;
    }

    void answered(long gapNanos, @Nullable NodeStatus status) {
        answered++;
        leastGapNanos = Math.min(leastGapNanos, gapNanos);
        mostGapNanos = Math.max(mostGapNanos, gapNanos);
        sumGapNanos += gapNanos;
        if (status != null) {
            first = first == null ? status : first;
            last = status;
        }
    }

    public int address() {
        return address;
    }

    /** The pit's name for it; empty where it has none. */
    public String name() {
        return name;
    }

    public long asked() {
        return asked;
    }

    public long answered() {
        return answered;
    }

    /** Of those answered, ns; as exact as the link. */
    public long meanGapNanos() {
        return answered == 0 ? 0 : sumGapNanos / answered;
    }

    public long leastGapNanos() {
        return answered == 0 ? 0 : leastGapNanos;
    }

    public long mostGapNanos() {
        return mostGapNanos;
    }

    /** From one poll of it to the next, on average, ns. */
    public long meanRoundNanos() {
        return asked < 2 ? 0 : (lastAskedNanos - firstAskedNanos) / (asked - 1);
    }

    public long longestRoundNanos() {
        return longestRoundNanos;
    }

    /** How often it restarted; -1 where it does not say. */
    public int restarts() {
        return first == null || last == null ? -1 : last.bootCount() - first.bootCount() & 0xFF;
    }

    /** How many frames it received wrong; -1 where it does not say. */
    public int receiveErrors() {
        return first == null || last == null ? -1 : last.receiveErrors() - first.receiveErrors() & 0xFF;
    }
}
