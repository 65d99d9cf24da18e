package dropline.harness.capture;

/**
 * The stretch of a run that is written: every frame whose first start bit lies in it, whole.
 *
 * @param fromNanos its begin, ns since the start of the run
 * @param toNanos its end, exclusive
 */
public record Stretch(long fromNanos, long toNanos) {
    public Stretch {
        if (fromNanos < 0 || toNanos <= fromNanos) {
            throw new IllegalArgumentException(
                    "a stretch must not begin below 0 and must last: from=" + fromNanos + " to=" + toNanos);
        }
    }

    /** Whether an instant lies in it. */
    public boolean holds(long atNanos) {
        return atNanos >= fromNanos && atNanos < toNanos;
    }
}
