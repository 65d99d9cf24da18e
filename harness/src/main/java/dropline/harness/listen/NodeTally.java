package dropline.harness.listen;

import dropline.protocol.NodeStatus;
import org.jspecify.annotations.Nullable;

/** What was heard of one address. */
public final class NodeTally {
    /** A display that was refreshed and then is not for so long stands still, ns. */
    private static final long STILL_NANOS = 5_000_000_000L;

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
    private long refreshedNanos = -1;
    private int displayStops;
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

    /** It has answered; says whether its display, which was refreshed before, stands still from now on. */
    boolean answered(long atNanos, long gapNanos, @Nullable NodeStatus status) {
        answered++;
        leastGapNanos = Math.min(leastGapNanos, gapNanos);
        mostGapNanos = Math.max(mostGapNanos, gapNanos);
        sumGapNanos += gapNanos;
        if (status != null) {
            boolean refreshed = last != null && last.refreshes() != status.refreshes();
            first = first == null ? status : first;
            last = status;
            return stops(atNanos, refreshed);
        }
        return false;
    }

    private boolean stops(long atNanos, boolean refreshed) {
        if (refreshed) {
            refreshedNanos = atNanos;
        }
        boolean stops = refreshedNanos >= 0 && atNanos - refreshedNanos > STILL_NANOS;
        if (stops) {
            refreshedNanos = -1;
            displayStops++;
        }
        return stops;
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

    /** How often its display, which had been refreshed, came to a stop. */
    public int displayStops() {
        return displayStops;
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
