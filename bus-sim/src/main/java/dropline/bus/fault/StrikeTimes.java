package dropline.bus.fault;

import dropline.bus.chance.Draws;
import dropline.bus.chance.Draws.Purpose;
import dropline.bus.fault.FaultKind.Timing;

/**
 * The instants at which an {@link Timing#EVENT} fault strikes, one after the other: once, at the begin of its span; or,
 * with a rate, with exponential gaps from there on. Each gap is a pure function of seed, struck thing, kind and the
 * strike's number, so that asking costs no memory and nothing else changes them.
 */
public final class StrikeTimes {
    /** In place of an instant: it strikes no more. */
    public static final long NEVER = Long.MAX_VALUE;

    private static final double NANOS_PER_SECOND = 1e9;

    private final long untilNanos;
    private final double meanGapNanos;
    private final long stream;
    private long number = 1;
    private long nextNanos;

    /** @param struck pit-wide unique name of what it strikes */
    public StrikeTimes(Fault fault, long seed, String struck) {
        if (fault.kind().timing() != Timing.EVENT) {
            throw new IllegalArgumentException("only an event strikes at instants: kind=" + fault.kind());
        }
        untilNanos = fault.untilNanos();
        meanGapNanos = fault.rate() == 0 ? 0 : NANOS_PER_SECOND / fault.rate();
        stream = Draws.stream(seed, Draws.nameHash(struck + ' ' + fault.kind().word()), Purpose.FAULT_INSTANT);
        nextNanos = fault.rate() == 0 ? fault.fromNanos() : after(fault.fromNanos());
    }

    /** When it strikes next, ns, or {@link #NEVER}. */
    public long nextNanos() {
        return nextNanos;
    }

    /** Which strike that is, from 1. */
    public long number() {
        return number;
    }

    /** That strike has happened; goes on to the one after, at least 1 ns later. */
    public void pass() {
        number++;
        nextNanos = meanGapNanos == 0 || nextNanos == NEVER ? NEVER : after(nextNanos);
    }

    private long after(long nanos) {
        double gap = -StrictMath.log1p(-Draws.draw(stream, number)) * meanGapNanos;
        double left = (double) untilNanos - nanos;
        if (gap >= left) {
            return NEVER;
        }
        long next = nanos + Math.max(1, (long) gap);
        return next < untilNanos ? next : NEVER;
    }
}
