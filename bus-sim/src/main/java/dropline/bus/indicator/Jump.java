package dropline.bus.indicator;

import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.fault.StrikeTimes;
import org.jspecify.annotations.Nullable;

/**
 * When a needle jumps, and how far: at each slip on its shaft by the same amount, or once when its zero is lost and
 * back when that is mended.
 */
final class Jump {
    final Needle needle;
    private final @Nullable StrikeTimes slips;
    private final long backNanos;
    private long units;
    private long nextNanos;

    Jump(Needle needle, Fault fault, long seed, String struck) {
        this.needle = needle;
        units = fault.amount();
        slips = fault.kind() == FaultKind.NEEDLE_SLIPPED ? new StrikeTimes(fault, seed, struck) : null;
        backNanos = fault.untilNanos() == Fault.TO_THE_END ? StrikeTimes.NEVER : fault.untilNanos();
        nextNanos = slips == null ? fault.fromNanos() : slips.nextNanos();
    }

    /** The next jump, ns, or {@link StrikeTimes#NEVER}. */
    long nextNanos() {
        return nextNanos;
    }

    /** How far it then jumps. */
    long units() {
        return units;
    }

    /** That jump has happened. */
    void pass() {
        if (slips != null) {
            slips.pass();
            nextNanos = slips.nextNanos();
        } else {
            nextNanos = nextNanos == backNanos ? StrikeTimes.NEVER : backNanos;
            units = -units;
        }
    }
}
