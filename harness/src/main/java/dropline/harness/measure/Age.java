package dropline.harness.measure;

/**
 * How old what a slot shows is: at any instant, the time since the newest state instant whose value equals the shown
 * one; what shows nothing any more only grows older. The mean is the integral over time, exact between events, from the
 * first value shown to the end.
 */
final class Age {
    private boolean started;
    private boolean blank;
    private long value;
    private long stateNanos;
    private long fromNanos;
    private long peakNanos;
    private long totalNanos;
    private double nanosSquared;

    void shown(long atNanos, long newValue, long newestStateNanos) {
        integrate(atNanos);
        started = true;
        blank = false;
        fromNanos = atNanos;
        value = newValue;
        stateNanos = newestStateNanos;
    }

    /** The slot shows nothing it knew, until a value is shown again. */
    void forget() {
        blank = true;
    }

    void stateSent(long atNanos, long trueValue) {
        if (started && !blank && trueValue == value) {
            integrate(atNanos);
            stateNanos = atNanos;
        }
    }

    void integrate(long untilNanos) {
        if (!started || untilNanos <= fromNanos) {
            return;
        }
        long span = untilNanos - fromNanos;
        nanosSquared += (double) span * ((fromNanos - stateNanos) + (untilNanos - stateNanos)) * 0.5;
        totalNanos += span;
        peakNanos = Math.max(peakNanos, untilNanos - stateNanos);
        fromNanos = untilNanos;
    }

    long meanNanos() {
        return totalNanos == 0 ? 0 : Math.round(nanosSquared / totalNanos);
    }

    long peakNanos() {
        return peakNanos;
    }
}
