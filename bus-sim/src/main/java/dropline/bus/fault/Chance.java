package dropline.bus.fault;

import dropline.bus.chance.Draws;
import dropline.bus.chance.Draws.Purpose;
import dropline.bus.fault.FaultKind.Timing;

/**
 * Whether a {@link Timing#CHANCE} fault strikes a frame, poll or move: a pure function of seed, struck thing, kind and
 * the ordinal of what may be struck.
 */
public final class Chance {
    private final Fault fault;
    private final long stream;

    /** @param struck pit-wide unique name of what it strikes */
    public Chance(Fault fault, long seed, String struck) {
        if (fault.kind().timing() != Timing.CHANCE) {
            throw new IllegalArgumentException("only a chance has a probability: kind=" + fault.kind());
        }
        this.fault = fault;
        stream = Draws.stream(seed, Draws.nameHash(struck + ' ' + fault.kind().word()), Purpose.FAULT_CHANCE);
    }

    /** Whether it strikes what happens at an instant and has this number; never outside its span. */
    public boolean strikes(long atNanos, long ordinal) {
        return fault.spans(atNanos) && Draws.draw(stream, ordinal) < fault.rate();
    }
}
