package dropline.bus.controller;

/**
 * The one program of a board that polls: it prepares one frame at a time, for whichever of its segments asked first.
 * The UARTs then send side by side.
 */
public final class BoardLoop {
    private final long turnNanos;
    private long freeNanos;

    /** @param turnNanos time it needs before each frame, ns */
    public BoardLoop(long turnNanos) {
        this.turnNanos = turnNanos;
    }

    /** Books the next free turn; tells when it begins, ns. */
    public long book(long atNanos) {
        long begin = Math.max(atNanos, freeNanos);
        freeNanos = begin + turnNanos;
        return begin;
    }

    /** How long a turn takes, ns. */
    public long turnNanos() {
        return turnNanos;
    }
}
