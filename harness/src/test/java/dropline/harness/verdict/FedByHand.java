package dropline.harness.verdict;

import static dropline.harness.measure.SmallPit.GEAR;
import static dropline.harness.measure.SmallPit.GEAR_LAMP;
import static dropline.harness.measure.SmallPit.LEFT;
import static dropline.harness.measure.SmallPit.MS;

import dropline.bus.pit.Layout;
import dropline.harness.measure.SegmentMeasures;
import dropline.harness.measure.SmallPit;
import java.util.List;

/** Measures that a test feeds by hand, and what comes of them. */
abstract class FedByHand {
    static final Run RUN = new Run("0.1.0", new Recording("by hand", 10_000 * MS), 7, 0xABCL, List.of());

    final SegmentMeasures measures = SmallPit.measures();

    /** A change of the gear signal, on time on the second lamp, after {@code tookNanos} on the first. */
    final void gear(long atNanos, int serial, long tookNanos) {
        measures.stateChanged(atNanos, GEAR, serial, serial);
        measures.stateSent(atNanos);
        measures.queued(atNanos, LEFT, GEAR, serial);
        measures.shown(atNanos + MS / 2, 4, serial);
        measures.carried(atNanos + tookNanos - 3, LEFT, GEAR, serial, serial);
        measures.applied(atNanos + tookNanos - 1, GEAR_LAMP, serial, atNanos + tookNanos - 2);
        measures.shown(atNanos + tookNanos, GEAR_LAMP, serial);
    }

    final ReplayResult result() {
        measures.ended(10_000 * MS);
        return verdicts().of(RUN, List.of(measures));
    }

    static Verdicts verdicts() {
        return new Verdicts(SmallPit.pit(), Layout.of(SmallPit.pit()));
    }
}
