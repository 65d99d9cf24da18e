package dropline.harness.measure;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.trace.TraceSink;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Folds the trace of one segment into what its panels show while the host is silent: what it said last is shown soon,
 * and stays, whatever else happens to the nodes. What changes in the simulator meanwhile nobody has said, so it does
 * not count.
 */
public final class SilenceMeasure implements TraceSink {
    private static final int AT_FIRST = 256;

    private final RecoveryMeasure shows;
    private final long untilNanos;
    private final long limitNanos;
    private int[] signals = new int[AT_FIRST];
    private int[] serials = new int[AT_FIRST];
    private long[] values = new long[AT_FIRST];
    private int waiting;
    private boolean over;

    /**
     * @param layout the pit's
     * @param segment index into the pit's segments
     * @param fromNanos when the host falls silent, ns
     * @param untilNanos when it speaks again, ns
     * @param limitNanos how long after it was said something may take to be shown, ns
     */
    public SilenceMeasure(Pit pit, Layout layout, int segment, long fromNanos, long untilNanos, long limitNanos) {
        this.untilNanos = untilNanos;
        this.limitNanos = limitNanos;
        Map<String, PanelLimit> limits = new LinkedHashMap<>();
        layout.nodes()
                .forEach(place -> place.node()
                        .panels()
                        .forEach(panel ->
                                limits.put(panel.name(), new PanelLimit(limitNanos, Long.MAX_VALUE, Long.MAX_VALUE))));
        shows = new RecoveryMeasure(pit, layout, segment, new RecoveryMeasure.Span(fromNanos, fromNanos), limits);
    }

    @Override
    public void stateChanged(long atNanos, int signal, int serial, long value) {
        if (waiting == signals.length) {
            signals = Arrays.copyOf(signals, 2 * waiting);
            serials = Arrays.copyOf(serials, 2 * waiting);
            values = Arrays.copyOf(values, 2 * waiting);
        }
        signals[waiting] = signal;
        serials[waiting] = serial;
        values[waiting++] = value;
    }

    @Override
    public void stateSent(long atNanos) {
        if (isOver(atNanos)) {
            return;
        }
        for (int i = 0; i < waiting; i++) {
            shows.stateChanged(atNanos, signals[i], serials[i], values[i]);
        }
        waiting = 0;
        shows.stateSent(atNanos);
    }

    @Override
    public void shown(long atNanos, int slot, int serial) {
        if (!isOver(atNanos)) {
            shows.shown(atNanos, slot, serial);
        }
    }

    @Override
    public void moved(long atNanos, int slot, long from, long until, long to) {
        if (!isOver(atNanos)) {
            shows.moved(atNanos, slot, from, until, to);
        }
    }

    @Override
    public void reset(long atNanos, int node, long readyNanos) {
        if (!isOver(atNanos)) {
            shows.reset(atNanos, node, readyNanos);
        }
    }

    @Override
    public void ended(long atNanos) {
        if (!isOver(atNanos)) {
            over = true;
            shows.ended(atNanos);
        }
    }

    private boolean isOver(long atNanos) {
        if (!over && atNanos >= untilNanos) {
            over = true;
            shows.ended(untilNanos);
        }
        return over;
    }

    /**
     * The panels of the segment that did not show in time what was said last, or whose needle stood elsewhere when the
     * silence was over; on its way there it may be meanwhile.
     */
    public List<PanelRecovery> wrong() {
        return shows.panels().stream()
                .filter(panel -> panel.lack() != PanelRecovery.Lack.NOTHING || panel.worstUpdateNanos() > limitNanos)
                .toList();
    }
}
