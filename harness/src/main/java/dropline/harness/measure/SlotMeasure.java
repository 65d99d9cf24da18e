package dropline.harness.measure;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Signal;

/**
 * The figures of one slot: a signal on an indicator.
 *
 * <p>Update latency runs from the oldest change not yet shown to the instant at which it or a newer one is shown. It is
 * cut into six stages: host (changed to sent), adapter (to queued), queue (to the start of the frame that delivered),
 * wire (to heard), node wait (to applied), device (to shown). A cut that is not in the trace, or lies before the one in
 * front of it, is moved onto that one, and one after the end onto the end: its time then counts for the next stage, and
 * the six still add up to the latency to the nanosecond. Changes at the first state instant are counted apart and not
 * timed.
 *
 * <p>A node that restarts has forgotten what it showed. What is shown again after that is no new change; the time from
 * the restart until then is the recovery.
 */
public final class SlotMeasure {
    /** How many stages there are. */
    public static final int STAGES = 6;

    private static final long STILL_YOUNG_NANOS = 1_000_000_000L;

    final Layout.Slot slot;
    final PanelMeasure panel;
    final Age age = new Age();
    final DisplayError error;
    final Settling settling;
    final Journeys journeys = new Journeys();

    private final SignalLog log;
    private final boolean moves;
    private final Times latency = new Times();
    private final Times ownDelay = new Times();
    private final long[] stageSums = new long[STAGES];
    private final long[] worstStages = new long[STAGES];
    private final long[] cuts = new long[STAGES + 1];

    private int shownSerial;
    private int oldestSerial;
    private long oldestChanged;
    private long oldestSent;
    private long oldestQueued;
    private int newestShown;
    private long resetNanos = SignalLog.NEVER;
    private long recoveryNanos;
    private long staleNanos;
    private long changes;
    private long initial;
    private long coalesced;
    private int undone;
    private long lost;
    private long openNanos;

    SlotMeasure(Layout.Slot slot, SignalLog log, PanelMeasure panel) {
        this.slot = slot;
        this.log = log;
        this.panel = panel;
        moves = slot.indicator().kind().moves();
        error = new DisplayError(log.signal, slot.indicator().motion().isInPieces());
        settling = new Settling(log.signal);
    }

    void changed(long atNanos, int serial, long value, boolean first) {
        error.truth(atNanos, value);
        if (first) {
            initial++;
            return;
        }
        changes++;
        if (oldestSerial == 0) {
            setOldest(serial, atNanos, SignalLog.NEVER, SignalLog.NEVER);
        }
    }

    private void setOldest(int serial, long changed, long sent, long queued) {
        oldestSerial = serial;
        oldestChanged = changed;
        oldestSent = sent;
        oldestQueued = queued;
    }

    /** The host sent everything; {@code undoneNow} changes since the last state need not be shown. */
    void sent(long atNanos, int latestBefore, int undoneNow) {
        undone += undoneNow;
        if (oldestSerial <= latestBefore) {
            return;
        }
        if (undoneNow > 0) {
            oldestSerial = 0;
        } else {
            oldestSent = atNanos;
        }
    }

    void queued(long atNanos, int serial) {
        journeys.queued(atNanos, serial);
        if (oldestSerial != 0 && serial >= oldestSerial && oldestQueued == SignalLog.NEVER) {
            oldestQueued = atNanos;
        }
    }

    /** The newest change it has ever shown; 0 if none. */
    int newestShown() {
        return newestShown;
    }

    void countCoalesced() {
        coalesced++;
    }

    void shown(long atNanos, int serial, long lastStateNanos) {
        if (serial <= shownSerial || !log.knows(serial)) {
            return;
        }
        long value = log.value(serial);
        long state = log.newestStateWithValueOf(serial, lastStateNanos);
        age.shown(atNanos, value, state == SignalLog.NEVER ? log.changedNanos(serial) : state);
        if (moves) {
            error.aimed(atNanos, value);
        } else {
            error.stepped(atNanos, value);
        }
        shownSerial = serial;
        recovered(atNanos);
        if (serial > newestShown) {
            newestShown = serial;
            undone = log.undoneAfter(serial);
        }
        if (oldestSerial != 0 && serial >= oldestSerial) {
            time(atNanos, serial, value);
            advance(serial);
        }
    }

    private void recovered(long atNanos) {
        if (resetNanos != SignalLog.NEVER) {
            recoveryNanos = Math.max(recoveryNanos, atNanos - resetNanos);
            resetNanos = SignalLog.NEVER;
        }
    }

    /** The slot's node restarted: a display is blank, a needle stands still, until the value is sent again. */
    void reset(long atNanos) {
        journeys.forget();
        if (shownSerial == 0) {
            return;
        }
        shownSerial = 0;
        resetNanos = atNanos;
        if (!moves) {
            age.forget();
            error.forget(atNanos);
        }
    }

    private void time(long atNanos, int serial, long value) {
        long took = atNanos - oldestChanged;
        boolean slowest = latency.count() == 0 || took > latency.maxNanos();
        latency.add(took);
        ownDelay.add(atNanos - log.changedNanos(serial));
        cut(atNanos, serial);
        for (int stage = 0; stage < STAGES; stage++) {
            long part = cuts[stage + 1] - cuts[stage];
            stageSums[stage] += part;
            if (slowest) {
                worstStages[stage] = part;
            }
        }
        if (moves) {
            settling.shown(atNanos, value, oldestChanged);
        }
        if (slowest) {
            panel.offer(this, oldestChanged, atNanos, cuts, journeys.timesCarriedSince(oldestChanged));
        }
    }

    private void cut(long atNanos, int serial) {
        cuts[0] = oldestChanged;
        cuts[1] = oldestSent;
        cuts[2] = oldestQueued;
        journeys.cuts(serial, cuts, 3);
        cuts[STAGES] = atNanos;
        for (int i = 1; i < STAGES; i++) {
            cuts[i] = Math.min(Math.max(cuts[i], cuts[i - 1]), atNanos);
        }
    }

    private void advance(int serial) {
        int next = log.firstStandingAfter(serial);
        if (next == 0) {
            oldestSerial = 0;
        } else {
            setOldest(next, log.changedNanos(next), log.sentNanos(next), journeys.queuedNanos(next));
        }
    }

    void moved(long atNanos, long from, long untilNanos, long to) {
        settling.moved(atNanos, untilNanos, to);
        error.moved(atNanos, from, untilNanos, log.signal.difference(to, from));
    }

    void ended(long atNanos) {
        age.integrate(atNanos);
        error.integrate(atNanos);
        settling.settle(atNanos);
        int young = log.youngerThan(atNanos - STILL_YOUNG_NANOS, newestShown);
        lost = Math.max(0, log.latest() - newestShown - young - undone);
        staleNanos = resetNanos == SignalLog.NEVER ? 0 : atNanos - resetNanos;
        openNanos = oldestSerial == 0 ? 0 : atNanos - oldestChanged;
    }

    /** Where the slot is. */
    public Layout.Slot slot() {
        return slot;
    }

    public Signal signal() {
        return log.signal;
    }

    public Times latency() {
        return latency;
    }

    /** From the delivered change itself to its being shown. */
    public Times ownDelay() {
        return ownDelay;
    }

    /** From the oldest change to the end of the motion; empty for what does not move. */
    public Times settling() {
        return settling.times();
    }

    /** Total of a stage over all latencies, ns. */
    public long stageSumNanos(int stage) {
        return stageSums[stage];
    }

    /** A stage of the longest latency, ns. */
    public long worstStageNanos(int stage) {
        return worstStages[stage];
    }

    public long ageMeanNanos() {
        return age.meanNanos();
    }

    public long agePeakNanos() {
        return age.peakNanos();
    }

    /** In the signal's unit. */
    public double displayErrorMax() {
        return error.max();
    }

    /** In the signal's unit. */
    public double displayErrorRms() {
        return error.rms();
    }

    /** Changes after the first state instant. */
    public long changes() {
        return changes;
    }

    /** Changes at the first state instant. */
    public long initial() {
        return initial;
    }

    public long coalesced() {
        return coalesced;
    }

    public long missed() {
        return log.missed();
    }

    /**
     * Changes at least 1 s old at the end that were neither shown, nor followed by a newer one shown, nor undone
     * unsent.
     */
    public long lost() {
        return lost;
    }

    /** How long the oldest change not shown had waited at the end, ns; 0 if all were shown. */
    public long openNanos() {
        return openNanos;
    }

    /** The longest time from a restart of its node until a value was shown again, ns; 0 if there was none. */
    public long recoveryNanos() {
        return recoveryNanos;
    }

    /** How long nothing had been shown at the end since its node restarted, ns; 0 if it had recovered. */
    public long staleNanos() {
        return staleNanos;
    }
}
