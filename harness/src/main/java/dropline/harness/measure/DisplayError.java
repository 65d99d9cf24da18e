package dropline.harness.measure;

import dropline.bus.pit.Signal;

/**
 * True value minus what a slot shows, over time: greatest, and the root of the mean square, both exact over steps and
 * over motion at constant speed. Counted from the first value shown; for a moving indicator from the instant at which
 * its first motion was due to end, so that finding its place at the start is left out. While a slot shows nothing there
 * is no error.
 */
final class DisplayError {
    private final double resolution;
    /** Steps in a turn of a signal that wraps; 0 for one that does not. */
    private final double turn;
    /** Whether one move may be several pieces. */
    private final boolean inPieces;

    private boolean started;
    private long fromNanos;
    private long trueValue;
    private double position;
    private double travel;
    private long motionNanos;
    private long motionEndNanos;
    private boolean placed;
    private double max;
    private double squareNanos;
    private long totalNanos;

    DisplayError(Signal signal, boolean inPieces) {
        this.inPieces = inPieces;
        resolution = signal.resolution();
        turn = signal.wraps() ? signal.steps() : 0;
    }

    void truth(long atNanos, long value) {
        integrate(atNanos);
        trueValue = value;
    }

    /** The slot shows a value at once (it does not move). */
    void stepped(long atNanos, long value) {
        moved(atNanos, value, atNanos, 0);
        start(atNanos);
    }

    /** A motion begins, and with that ends the one before. {@code distance} has a sign. */
    void moved(long atNanos, long from, long untilNanos, long distance) {
        boolean stillFindsItsPlace = inPieces && started && totalNanos == 0 && atNanos == fromNanos;
        integrate(atNanos);
        placed = true;
        position = from;
        travel = distance;
        motionNanos = atNanos;
        motionEndNanos = untilNanos;
        if (stillFindsItsPlace) {
            fromNanos = untilNanos;
        }
    }

    /** A moving indicator takes up a value; if it has never moved, it is there already. */
    void aimed(long atNanos, long value) {
        if (!placed) {
            moved(atNanos, value, atNanos, 0);
        }
        start(Math.max(atNanos, motionEndNanos));
    }

    /** The slot shows nothing, until a value is shown again. */
    void forget(long atNanos) {
        integrate(atNanos);
        started = false;
    }

    private void start(long atNanos) {
        if (!started) {
            started = true;
            fromNanos = atNanos;
        }
    }

    void integrate(long untilNanos) {
        if (!started || untilNanos <= fromNanos) {
            return;
        }
        if (fromNanos < motionEndNanos) {
            long end = Math.min(untilNanos, motionEndNanos);
            linear(fromNanos, end);
            fromNanos = end;
        }
        if (fromNanos < untilNanos) {
            double error = shortWay(trueValue - (position + travel));
            add(error, error, (double) (untilNanos - fromNanos));
            fromNanos = untilNanos;
        }
    }

    /** The error runs along a straight line; where it would pass half a turn, it goes on from the other side. */
    private void linear(long from, long until) {
        double speed = travel / (motionEndNanos - motionNanos);
        double error = shortWay(trueValue - (position + speed * (from - motionNanos)));
        double left = until - from;
        while (left > 0) {
            double end = error - speed * left;
            double half = turn / 2;
            if (turn == 0 || Math.abs(end) <= half || speed == 0) {
                add(error, end, left);
                return;
            }
            double edge = end > 0 ? half : -half;
            double span = Math.min(left, Math.max(0, (error - edge) / speed));
            add(error, edge, span);
            left -= span;
            error = -edge;
        }
    }

    private void add(double error, double end, double nanos) {
        max = Math.max(max, Math.max(Math.abs(error), Math.abs(end)));
        squareNanos += nanos * (error * error + error * end + end * end) / 3;
        totalNanos += Math.round(nanos);
    }

    private double shortWay(double difference) {
        return turn == 0 ? difference : difference - turn * Math.rint(difference / turn);
    }

    /** In the signal's unit. */
    double max() {
        return max * resolution;
    }

    /** In the signal's unit. */
    double rms() {
        return totalNanos == 0 ? 0 : Math.sqrt(squareNanos / totalNanos) * resolution;
    }
}
