package dropline.harness.measure;

import dropline.bus.pit.Layout;

/**
 * What one slot does to its panel's {@link PanelRecovery}. Update latency is that of {@link SlotMeasure}: from the
 * oldest change not yet shown.
 */
final class SlotRecovery {
    private static final long NEVER = -1;

    private final Layout.Slot slot;
    private final SignalLog log;
    private final PanelRecovery panel;
    private final boolean moves;
    private final boolean inPieces;
    private int shownSerial;
    private long shownValue;
    private int oldestSerial;
    private long oldestChanged;
    private long forgottenSince = NEVER;
    private boolean hasMoved;
    private long aim;
    private long restNanos = NEVER;
    private boolean wrong;

    SlotRecovery(Layout.Slot slot, SignalLog log, PanelRecovery panel) {
        this.slot = slot;
        this.log = log;
        this.panel = panel;
        moves = slot.indicator().kind().moves();
        inPieces = slot.indicator().motion().isInPieces();
    }

    int node() {
        return slot.node();
    }

    /** The newest change it has shown; 0 if none. */
    int shownSerial() {
        return shownSerial;
    }

    void changed(long atNanos, int serial) {
        if (oldestSerial == 0) {
            oldestSerial = serial;
            oldestChanged = atNanos;
        }
    }

    /** The host sent everything; changes that had been undone by then need not be shown. */
    void sent(int latestBefore, boolean undone) {
        if (undone && oldestSerial > latestBefore) {
            oldestSerial = 0;
        }
    }

    /** Its node restarted. */
    void forgot(long atNanos) {
        if (shownSerial > 0 && forgottenSince == NEVER) {
            forgottenSince = atNanos;
        }
    }

    void moved(long atNanos, long untilNanos, long to) {
        if (atNanos > restNanos) {
            judgeAtRest();
        }
        hasMoved = true;
        aim = to;
        restNanos = untilNanos;
    }

    void shown(long atNanos, int serial) {
        if (forgottenSince != NEVER && serial >= shownSerial) {
            panel.showed(atNanos, atNanos - forgottenSince);
            forgottenSince = NEVER;
        }
        if (serial > shownSerial && log.knows(serial)) {
            shownSerial = serial;
            shownValue = log.value(serial);
            if (oldestSerial != 0 && serial >= oldestSerial) {
                panel.showed(atNanos, atNanos - oldestChanged);
                advance(serial);
            }
        }
        if (!inPieces) {
            judge(atNanos);
        }
    }

    /** Where a move is several pieces, only the end of the last one can be held against what was to be shown. */
    private void judgeAtRest() {
        if (inPieces && hasMoved) {
            judge(restNanos);
        }
    }

    private void judge(long atNanos) {
        boolean off = off();
        if (wrong && !off) {
            panel.righted(atNanos);
        }
        wrong = off;
    }

    private void advance(int serial) {
        oldestSerial = log.firstStandingAfter(serial);
        oldestChanged = oldestSerial == 0 ? 0 : log.changedNanos(oldestSerial);
    }

    /** Whether a needle goes elsewhere than to the value it shows. */
    private boolean off() {
        return moves && hasMoved && shownSerial > 0 && log.signal.difference(aim, shownValue) != 0;
    }

    void ended(long atNanos) {
        if (forgottenSince != NEVER) {
            panel.waits(atNanos - forgottenSince, PanelRecovery.Lack.FORGOTTEN);
        }
        if (oldestSerial != 0) {
            panel.waits(atNanos - oldestChanged, PanelRecovery.Lack.WAITING);
        }
        if (atNanos >= restNanos) {
            judgeAtRest();
        }
        if (off() && (!inPieces || atNanos >= restNanos)) {
            panel.standsWrong();
        }
    }
}
