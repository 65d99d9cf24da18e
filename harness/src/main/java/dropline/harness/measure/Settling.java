package dropline.harness.measure;

import dropline.bus.pit.Signal;

/**
 * From the oldest change to the end of the motion that shows it or a newer one. A motion that is cut short by a new
 * command settles nothing, so that an indicator that never arrives cannot look quick.
 */
final class Settling {
    private final Signal signal;
    private final Times times = new Times();
    private boolean open;
    private long oldestNanos;
    private long shownNanos;
    private long target;
    private long motionEndNanos;
    private long motionTarget;
    private boolean moved;

    Settling(Signal signal) {
        this.signal = signal;
    }

    /** A motion begins; the one before is over or cut. */
    void moved(long atNanos, long untilNanos, long to) {
        settle(atNanos);
        moved = true;
        motionEndNanos = untilNanos;
        motionTarget = to;
    }

    void shown(long atNanos, long value, long oldestChangeNanos) {
        settle(atNanos);
        if (!open) {
            open = true;
            oldestNanos = oldestChangeNanos;
        }
        shownNanos = atNanos;
        target = value;
    }

    /** Counts what has come to rest by {@code nowNanos}. */
    void settle(long nowNanos) {
        long rest = Math.max(shownNanos, motionEndNanos);
        if (open && rest <= nowNanos && (!moved || signal.difference(motionTarget, target) == 0)) {
            times.add(rest - oldestNanos);
            open = false;
        }
    }

    Times times() {
        return times;
    }
}
