package dropline.harness.measure;

import dropline.bus.pit.Panel;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One panel: its slots, and its slowest update with what the segment was doing around it. The frames are copied out
 * only when an update is slower than any of the panel's before, so that the cost is bounded.
 */
public final class PanelMeasure {
    /** Most frames kept around the worst moment. */
    public static final int MOST_FRAMES = 200;

    private static final long LEAD_NANOS = 5_000_000L;

    private final Panel panel;
    private final int node;
    private final FrameLog log;
    private final List<SlotMeasure> slots = new ArrayList<>();
    private final long[] cuts = new long[SlotMeasure.STAGES + 1];
    private @Nullable SlotMeasure slowest;
    private @Nullable FrameCopy frames;
    private long fromNanos;
    private int timesCarried;
    private int timeOuts;
    private int clashes;
    private int overruns;

    PanelMeasure(Panel panel, int node, FrameLog log) {
        this.panel = panel;
        this.node = node;
        this.log = log;
    }

    void add(SlotMeasure slot) {
        slots.add(slot);
    }

    /** A slot's slowest update so far; kept if it is the panel's as well. */
    void offer(SlotMeasure slot, long changedNanos, long shownNanos, long[] slotCuts, int carried) {
        if (slowest != null && shownNanos - changedNanos <= latencyNanos()) {
            return;
        }
        slowest = slot;
        System.arraycopy(slotCuts, 0, cuts, 0, cuts.length);
        timesCarried = carried;
        timeOuts = log.mishapsSince(changedNanos, FrameLog.TIME_OUT, node);
        clashes = log.mishapsSince(changedNanos, FrameLog.CLASH, node);
        overruns = log.mishapsSince(changedNanos, FrameLog.OVERRUN, node);
        if (frames == null) {
            frames = new FrameCopy();
        }
        frames.take(log, changedNanos - LEAD_NANOS);
        fromNanos = Math.max(0, changedNanos - LEAD_NANOS);
        if (frames.count() == MOST_FRAMES) {
            fromNanos = Math.max(fromNanos, frames.startNanos(0));
        }
    }

    public Panel panel() {
        return panel;
    }

    /** Index into {@link dropline.bus.pit.Layout#nodes()}. */
    public int node() {
        return node;
    }

    public List<SlotMeasure> slots() {
        return List.copyOf(slots);
    }

    /** The longest time from a restart of its node until all that it had shown was shown again, ns; 0 for none. */
    public long recoveryNanos() {
        return slots.stream().mapToLong(SlotMeasure::recoveryNanos).max().orElse(0);
    }

    /** How long some of it had not been shown at the end since its node restarted, ns; 0 if it had recovered. */
    public long staleNanos() {
        return slots.stream().mapToLong(SlotMeasure::staleNanos).max().orElse(0);
    }

    /** The slot of the slowest update; null if there was none. */
    public @Nullable SlotMeasure slowest() {
        return slowest;
    }

    /** The frames around the slowest update; null if there was none. */
    public @Nullable FrameCopy frames() {
        return frames;
    }

    /** The instants between which stages lie at the slowest update, 0 to {@link SlotMeasure#STAGES}. */
    public long cutNanos(int cut) {
        return cuts[cut];
    }

    private long latencyNanos() {
        return cuts[SlotMeasure.STAGES] - cuts[0];
    }

    /** Start of the window that the frames cover, ns; it ends where the latency ends. */
    public long fromNanos() {
        return fromNanos;
    }

    public int timesCarried() {
        return timesCarried;
    }

    public int timeOuts() {
        return timeOuts;
    }

    public int clashes() {
        return clashes;
    }

    public int overruns() {
        return overruns;
    }
}
