package dropline.harness.measure;

import dropline.bus.pit.Panel;

/**
 * What became of one panel after a fault.
 *
 * <p>An update or move is late when it took longer than the panel's limit. A panel has recovered when its last late one
 * was shown, or told, and everything that changed since is shown within its limit; it never recovers when at the end of
 * the run something still waits for longer than that, is forgotten, or a needle stands in the wrong place.
 */
public final class PanelRecovery {
    private static final long NONE = -1;

    private final Panel panel;
    private final int node;
    private final RecoveryMeasure.Span span;
    private final PanelLimit limit;
    private long worstUpdateNanos;
    private long worstControlNanos;
    private long lastLateNanos = NONE;
    private boolean touched;
    private boolean stoodWrong;
    private long lostSteps;
    private long spurious;
    private Lack lack = Lack.NOTHING;

    /** What is still wrong with a panel at the end of a run. */
    public enum Lack {
        NOTHING,
        /** A change waits to be shown. */
        WAITING,
        /** It has forgotten a value and was not sent it again. */
        FORGOTTEN,
        /** A needle does not stand where it should. */
        WRONG,
        /** The host was not told of a move. */
        UNTOLD
    }

    PanelRecovery(Panel panel, int node, RecoveryMeasure.Span span, PanelLimit limit) {
        this.panel = panel;
        this.node = node;
        this.span = span;
        this.limit = limit;
    }

    /** A change was shown, or a forgotten value was shown again. */
    void showed(long atNanos, long tookNanos) {
        if (atNanos >= span.strikesNanos()) {
            worstUpdateNanos = Math.max(worstUpdateNanos, tookNanos);
            if (tookNanos > limit.updateNanos()) {
                late(atNanos);
            }
        }
    }

    /** A needle that stood wrong stands right again. */
    void righted(long atNanos) {
        if (atNanos >= span.strikesNanos()) {
            stoodWrong = true;
            late(atNanos);
        }
    }

    void told(long atNanos, long tookNanos) {
        if (atNanos >= span.strikesNanos()) {
            worstControlNanos = Math.max(worstControlNanos, tookNanos);
            if (tookNanos > limit.controlNanos()) {
                late(atNanos);
            }
        }
    }

    private void late(long atNanos) {
        touched = true;
        lastLateNanos = Math.max(lastLateNanos, atNanos);
    }

    /** How long something has waited at the end. */
    void waits(long openNanos, Lack what) {
        worstUpdateNanos = Math.max(worstUpdateNanos, openNanos);
        if (openNanos > limit.updateNanos()) {
            lacks(what);
        }
    }

    /** A needle stands wrong at the end. */
    void standsWrong() {
        stoodWrong = true;
        lacks(Lack.WRONG);
    }

    void controlEnded(ControlMeasure control) {
        worstControlNanos = Math.max(worstControlNanos, control.openNanos());
        if (control.openNanos() > limit.controlNanos()) {
            lacks(Lack.UNTOLD);
        }
        lostSteps += control.lostSteps();
        spurious += control.spurious();
    }

    private void lacks(Lack what) {
        touched = true;
        if (lack == Lack.NOTHING) {
            lack = what;
        }
    }

    public Panel panel() {
        return panel;
    }

    /** Index into {@link dropline.bus.pit.Layout#nodes()}. */
    public int node() {
        return node;
    }

    /** Longest update latency since the fault struck, what waits at the end included, ns. */
    public long worstUpdateNanos() {
        return worstUpdateNanos;
    }

    /** Longest control latency since the fault struck, what waits at the end included, ns. */
    public long worstControlNanos() {
        return worstControlNanos;
    }

    /** Whether anything was late, forgotten, wrong or lost. */
    public boolean touched() {
        return touched || moreLostSteps() > 0 || spurious > 0;
    }

    /** What is still wrong at the end; what was found first. */
    public Lack lack() {
        return lack;
    }

    /** From when the fault was over until the last late change was shown, ns; 0 where none was after that. */
    public long recoveryNanos() {
        return lastLateNanos == NONE ? 0 : Math.max(0, lastLateNanos - span.overNanos());
    }

    /** Whether a needle stood in the wrong place. */
    public boolean stoodWrong() {
        return stoodWrong;
    }

    /** Steps of its controls that got lost in the whole run. */
    public long lostSteps() {
        return lostSteps;
    }

    /** Moves of its controls that nobody made. */
    public long spurious() {
        return spurious;
    }

    /** Lost steps beyond those that get lost anyway. */
    public long moreLostSteps() {
        return Math.max(0, lostSteps - limit.lostSteps());
    }
}
