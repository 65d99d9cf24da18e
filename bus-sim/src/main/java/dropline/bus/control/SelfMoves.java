package dropline.bus.control;

import dropline.bus.chance.Draws;
import dropline.bus.chance.Draws.Purpose;
import dropline.bus.fault.Fault;
import dropline.bus.fault.StrikeTimes;

/** When one control seems to move by itself, and how. */
final class SelfMoves {
    /** How much longer than its debounce time a contact that flickered holds, ns: from 1 ms up to 5 ms. */
    private static final long LEAST_HOLD_NANOS = 1_000_000;

    private static final long HOLD_SPREAD_NANOS = 4_000_000;

    final int control;
    private final StrikeTimes times;
    private final long sizeStream;
    private long backNanos = StrikeTimes.NEVER;
    private long strike;
    private int seenSerial;
    private int stood;

    SelfMoves(int control, Fault fault, long seed, String struck) {
        this.control = control;
        times = new StrikeTimes(fault, seed, struck);
        sizeStream =
                Draws.stream(seed, Draws.nameHash(struck + ' ' + fault.kind().word()), Purpose.FAULT_SIZE);
    }

    /** When it seems to move next, ns, or {@link StrikeTimes#NEVER}. */
    long nextNanos() {
        return Math.min(times.nextNanos(), backNanos);
    }

    /** Whether that is a flicker's way back. */
    boolean isWayBack() {
        return backNanos <= times.nextNanos();
    }

    /** The way back is over. */
    void passBack() {
        backNanos = StrikeTimes.NEVER;
    }

    /** The strike is over. */
    void pass() {
        strike = times.number();
        times.pass();
    }

    /** The strike passed last was seen under a serial, and will go back to where the contact stood. */
    void comeBack(long atNanos, long debounceNanos, int serial, int stoodBefore) {
        seenSerial = serial;
        stood = stoodBefore;
        backNanos = atNanos
                + debounceNanos
                + LEAST_HOLD_NANOS
                + (long) (Draws.draw(sizeStream, strike) * HOLD_SPREAD_NANOS);
    }

    /** Whether a flicker's way back is still to come. */
    boolean isOut() {
        return backNanos != StrikeTimes.NEVER;
    }

    /** The serial under which the node believes what flickered. */
    int seenSerial() {
        return seenSerial;
    }

    /** Where the contact stood before. */
    int stood() {
        return stood;
    }

    /** How far an axis wanders at the strike passed last: beyond its dead band, up to twice as far; with a sign. */
    int wander(int deadBand) {
        double draw = Draws.draw(sizeStream, strike);
        int size = deadBand + 1 + (int) (draw * 2 % 1 * (deadBand + 1));
        return draw < 0.5 ? -size : size;
    }
}
