package dropline.bus.indicator;

/**
 * The way of one move, as straight lines between joints: how far, and how fast at the joints. Distances are in units of
 * the signal's resolution, with a sign; speeds in units a nanosecond.
 *
 * <p>While it gains or loses speed a motor's true way is a parabola. Each such ramp is cut into {@link #PIECES} pieces
 * of the same duration whose joints lie on it exactly, at their instants rounded to the nanosecond; between them the
 * straight line is off by at most a/8 times the piece's duration squared, so for a ramp from rest to speed v under
 * acceleration a by v^2 / (128 a), a 64th of the ramp's own length.
 */
final class Path {
    static final int PIECES = 4;

    private static final int MOST_JOINTS = 3 * PIECES + 3;

    private final long[] nanos = new long[MOST_JOINTS];
    private final double[] way = new double[MOST_JOINTS];
    private final double[] speed = new double[MOST_JOINTS];
    private int joints;
    private boolean uniform;
    private double distance;
    private double clock;

    /** At rest from an instant on. */
    void rest(long atNanos) {
        straight(atNanos, atNanos, 0);
    }

    /** At one speed all the way, begun and ended at once. */
    void straight(long fromNanos, long untilNanos, double wholeWay) {
        begin(fromNanos, 0, 0);
        distance = wholeWay;
        uniform = true;
        add(untilNanos, wholeWay, 0);
    }

    /**
     * From a present speed to rest at a distance, in the shortest time. What goes the wrong way, or too fast to stop
     * there, first brakes to a stop and then comes back.
     *
     * @param present speed at the start, with a sign
     * @param most greatest speed
     * @param gain speed gained or lost in a nanosecond
     */
    void ramped(long atNanos, double wholeWay, double present, double most, double gain) {
        begin(atNanos, wholeWay, present);
        double left = wholeWay;
        double pace = present;
        double stop = present * present / (2 * gain);
        if (present * wholeWay < 0 || (present != 0 && stop > Math.abs(wholeWay))) {
            ramp(present, 0, gain);
            left -= Math.signum(present) * stop;
            pace = 0;
        }
        double sign = Math.signum(left);
        double rest = Math.abs(left);
        double start = Math.abs(pace);
        double peak = Math.max(start, Math.min(most, Math.sqrt(gain * rest + start * start / 2)));
        ramp(sign * start, sign * peak, gain);
        double cruise = rest - (2 * peak * peak - start * start) / (2 * gain);
        if (cruise > 0 && peak > 0) {
            clock += cruise / peak;
            add(atNanos + Math.round(clock), way[joints - 1] + sign * cruise, sign * peak);
        }
        ramp(sign * peak, 0, gain);
        end(wholeWay);
    }

    private void begin(long atNanos, double wholeWay, double present) {
        joints = 0;
        clock = 0;
        uniform = false;
        distance = wholeWay;
        nanos[0] = atNanos;
        way[0] = 0;
        speed[0] = present;
        joints = 1;
    }

    private void ramp(double fromSpeed, double toSpeed, double gain) {
        double takes = Math.abs(toSpeed - fromSpeed) / gain;
        double start = way[joints - 1];
        double began = clock;
        for (int piece = 1; piece <= PIECES && takes > 0; piece++) {
            double part = (double) piece / PIECES;
            double now = fromSpeed + part * (toSpeed - fromSpeed);
            clock = began + part * takes;
            add(nanos[0] + Math.round(clock), start + (fromSpeed + now) / 2 * part * takes, now);
        }
    }

    /** Where joints fall onto the same nanosecond, the last one counts; the first stays. */
    private void add(long atNanos, double reached, double now) {
        if (joints > 1 && nanos[joints - 1] == atNanos) {
            joints--;
        }
        nanos[joints] = atNanos;
        way[joints] = reached;
        speed[joints++] = now;
    }

    private void end(double wholeWay) {
        if (joints == 1) {
            add(nanos[0], wholeWay, 0);
        }
        way[joints - 1] = wholeWay;
        speed[joints - 1] = 0;
    }

    int joints() {
        return joints;
    }

    long nanos(int joint) {
        return nanos[joint];
    }

    long endNanos() {
        return nanos[joints - 1];
    }

    /** The first joint at which it has stopped to turn round, or 0 if it goes the right way from the start. */
    int turn() {
        if (speed[0] == 0 || speed[0] * distance > 0) {
            return 0;
        }
        int joint = 1;
        while (joint < joints - 1 && speed[joint] != 0) {
            joint++;
        }
        return joint;
    }

    /** The speed at an instant. */
    double speedAt(long atNanos) {
        if (uniform || atNanos >= endNanos()) {
            return 0;
        }
        int joint = before(atNanos);
        return speed[joint] + partOfPiece(joint, atNanos) * (speed[joint + 1] - speed[joint]);
    }

    /** Where something stands at an instant that goes from one position to another along this way. */
    long along(long from, long to, long atNanos) {
        if (atNanos >= endNanos()) {
            return to;
        }
        int joint = before(atNanos);
        double part = partOfPiece(joint, atNanos);
        if (uniform) {
            return from + Math.round(part * (to - from));
        }
        double gone = way[joint] + part * (way[joint + 1] - way[joint]);
        return from + Math.round(to - from == distance || distance == 0 ? gone : gone / distance * (to - from));
    }

    private int before(long atNanos) {
        int joint = 0;
        while (joint < joints - 2 && nanos[joint + 1] <= atNanos) {
            joint++;
        }
        return joint;
    }

    private double partOfPiece(int joint, long atNanos) {
        return nanos[joint + 1] == nanos[joint]
                ? 1
                : (double) (atNanos - nanos[joint]) / (nanos[joint + 1] - nanos[joint]);
    }
}
