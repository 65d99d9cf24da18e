package dropline.bus.indicator;

import dropline.bus.chance.Draws;
import dropline.bus.fault.Fault;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Signal;
import dropline.bus.trace.EventOrder;
import dropline.bus.trace.Rank;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Everything that shows something on one segment, by slot. A lamp shows when its output is switched; a refreshed
 * display at the end of the refresh that contains the value; what moves at its first motion towards it, from where it
 * stands at that instant, at its greatest speed, the short way round if the signal wraps; a filament or flag once it
 * has got there. Until a first value is applied a needle stands at the signal's least value: a run begins with every
 * board up and every zero found.
 */
public final class Shows implements EventOrder.Revision {
    private static final double NANOS_PER_SECOND = 1e9;

    private final List<Layout.Slot> slots;
    private final Signal[] signals;
    private final @Nullable Refresh[] refreshes;
    private final long[] framePhase;
    private final int[] appliedSerial;
    private final long[] plannedNanos;
    private final int[] plannedSerial;
    private final long[] beforeNanos;
    private final int[] beforeSerial;
    private final long[] motionStart;
    private final long[] motionEnd;
    private final long[] motionFrom;
    private final long[] motionTo;
    private final long[] earlierStart;
    private final long[] earlierEnd;
    private final long[] earlierFrom;
    private final long[] earlierTo;
    private final @Nullable Freezes freezes;
    private final @Nullable SteppedSlots stepped;
    private @Nullable EventOrder events;

    /** All of a pit's slots, so that slot numbers are the trace's; nothing is wrong with any of them. */
    public Shows(Pit pit, Layout layout, long seed) {
        this(pit, layout, 0, seed, List.of());
    }

    /**
     * All of a pit's slots; only one segment's are ever applied here.
     *
     * @param segment that segment's index
     * @param faults what goes wrong; those of other segments are left out
     */
    public Shows(Pit pit, Layout layout, int segment, long seed, List<Fault> faults) {
        freezes = Freezes.of(layout, segment, faults);
        stepped = SteppedSlots.of(pit, layout, segment, seed, faults);
        slots = layout.slots();
        int count = slots.size();
        signals = new Signal[count];
        refreshes = new Refresh[count];
        framePhase = new long[count];
        appliedSerial = new int[count];
        plannedNanos = new long[count];
        plannedSerial = new int[count];
        beforeNanos = new long[count];
        beforeSerial = new int[count];
        motionStart = new long[count];
        motionEnd = new long[count];
        motionFrom = new long[count];
        motionTo = new long[count];
        earlierStart = new long[count];
        earlierEnd = new long[count];
        earlierFrom = new long[count];
        earlierTo = new long[count];
        for (int i = 0; i < count; i++) {
            Layout.Slot slot = slots.get(i);
            Signal signal = pit.signals().get(slot.signal());
            signals[i] = signal;
            plannedNanos[i] = -1;
            beforeNanos[i] = -1;
            long rest = rest(signal);
            motionFrom[i] = rest;
            motionTo[i] = rest;
            earlierFrom[i] = rest;
            earlierTo[i] = rest;
            if (slot.indicator().kind().hasFrames() && slot.indicator().refreshEveryNanos() > 0) {
                String name = slot.panel().name() + "/" + slot.indicator().name();
                long stream = Draws.stream(seed, Draws.nameHash(name), Draws.Purpose.SERVO_PHASE);
                framePhase[i] = (long) (Draws.draw(stream, 0) * slot.indicator().refreshEveryNanos());
                int framed = i;
                refreshes[i] = atNanos -> frame(framed, atNanos);
            }
        }
    }

    /** Where events go. */
    public void postTo(EventOrder order) {
        events = order;
    }

    /** Tells when a refreshed slot's display is refreshed. */
    public void refreshedBy(int slot, Refresh refresh) {
        refreshes[slot] = refresh;
    }

    /**
     * The node's program has a value for a slot. A serial it already had changes nothing.
     *
     * @param atNanos not before any earlier call's for this slot
     */
    public void apply(int slot, int serial, long value, long atNanos, long heardNanos) {
        if (serial > appliedSerial[slot]) {
            appliedSerial[slot] = serial;
            if (stepped != null && stepped.has(slot)) {
                stepped.apply(slot, serial, atNanos, heardNanos);
            } else {
                Objects.requireNonNull(events).post(atNanos, Rank.APPLIED, slot, serial, 0, 0, 0, heardNanos, 0, 0);
            }
        } else if (freezes == null || !freezes.holds(slot, serial)) {
            return;
        }
        show(slot, serial, value, atNanos);
    }

    private void show(int slot, int serial, long value, long atNanos) {
        Indicator indicator = slots.get(slot).indicator();
        Refresh refresh = refreshes[slot];
        long shownNanos = atNanos + indicator.startNanos();
        if (refresh != null) {
            shownNanos = refresh.shownNanos(shownNanos);
        }
        if (freezes != null) {
            shownNanos = freezes.thawed(slot, serial, shownNanos, refresh);
            if (shownNanos == Freezes.NEVER) {
                return;
            }
        }
        EventOrder order = Objects.requireNonNull(events);
        if (stepped != null && stepped.has(slot)) {
            remember(slot, serial, shownNanos);
            stepped.show(slot, serial, value, shownNanos);
        } else if (indicator.kind().moves()) {
            move(order, slot, serial, value, shownNanos);
        } else {
            plan(order, slot, serial, shownNanos);
        }
    }

    /**
     * A node forgets: what it was about to show comes to nothing, needles stop where they are, and a value that it had
     * is taken, shown or commanded again when it is sent again.
     *
     * @param readyNanos when its program runs again
     * @throws IllegalStateException if no fault of this run strikes that node
     */
    public void forget(int node, long nowNanos, long readyNanos) {
        for (int slot = 0; slot < slots.size(); slot++) {
            if (slots.get(slot).node() == node) {
                if (stepped == null || !stepped.has(slot)) {
                    throw new IllegalStateException("only a node that a fault strikes may forget: node=" + node);
                }
                appliedSerial[slot] = 0;
                plannedNanos[slot] = -1;
                beforeNanos[slot] = -1;
                stepped.forget(slot, nowNanos, readyNanos, Objects.requireNonNull(events));
            }
        }
    }

    /** When one of the slots that must be stepped changes next, ns; {@link Long#MAX_VALUE} if none will. */
    public long nextNanos() {
        return stepped == null ? Long.MAX_VALUE : stepped.nextNanos();
    }

    /** Lets that change happen. */
    public void step() {
        Objects.requireNonNull(stepped).step(Objects.requireNonNull(events), this);
    }

    /** Whether any of these slots does something by itself, so that {@link #step} must be called in time. */
    public boolean mustStep() {
        return stepped != null;
    }

    /** Where something stands until a first value is applied. */
    static long rest(Signal signal) {
        return Math.round(signal.min() / signal.resolution());
    }

    private static double unitsPerNano(Layout.Slot slot, Signal signal) {
        return slot.indicator().motion().ratePerSecond() / signal.resolution() / NANOS_PER_SECOND;
    }

    @Override
    public boolean holds(Rank rank, long atNanos, int slot, int serial) {
        return (stepped != null && stepped.decides(slot)) || isNewest(atNanos, slot, serial);
    }

    /** Whether no newer value is to be shown at the same instant. */
    boolean isNewest(long atNanos, int slot, int serial) {
        if (plannedNanos[slot] == atNanos) {
            return plannedSerial[slot] == serial;
        }
        return beforeNanos[slot] != atNanos || beforeSerial[slot] == serial;
    }

    private void plan(EventOrder order, int slot, int serial, long shownNanos) {
        remember(slot, serial, shownNanos);
        order.post(shownNanos, Rank.SHOWN, slot, serial, 0, 0);
    }

    /** The newest for its instant; that of the instant before, perhaps still to come, stays known. */
    private void remember(int slot, int serial, long shownNanos) {
        if (plannedNanos[slot] != shownNanos) {
            beforeNanos[slot] = plannedNanos[slot];
            beforeSerial[slot] = plannedSerial[slot];
            plannedNanos[slot] = shownNanos;
        }
        plannedSerial[slot] = serial;
    }

    private long frame(int slot, long atNanos) {
        long every = slots.get(slot).indicator().refreshEveryNanos();
        long since = atNanos - framePhase[slot];
        long frames = since <= 0 ? 0 : (since + every - 1) / every;
        return framePhase[slot] + frames * every;
    }

    private void move(EventOrder order, int slot, int serial, long value, long startNanos) {
        Signal signal = signals[slot];
        if (startNanos == plannedNanos[slot]) {
            motionStart[slot] = earlierStart[slot];
            motionEnd[slot] = earlierEnd[slot];
            motionFrom[slot] = earlierFrom[slot];
            motionTo[slot] = earlierTo[slot];
        }
        long from = position(slot, startNanos);
        long distance = signal.difference(value, from);
        long takes = (long) Math.ceil(Math.abs(distance) / unitsPerNano(slots.get(slot), signal));
        earlierStart[slot] = motionStart[slot];
        earlierEnd[slot] = motionEnd[slot];
        earlierFrom[slot] = motionFrom[slot];
        earlierTo[slot] = motionTo[slot];
        motionStart[slot] = startNanos;
        motionEnd[slot] = startNanos + takes;
        motionFrom[slot] = from;
        motionTo[slot] = from + distance;
        plan(order, slot, serial, startNanos);
        order.post(startNanos, Rank.MOVED, slot, serial, 0, 0, 0, from, startNanos + takes, from + distance);
    }

    private long position(int slot, long atNanos) {
        if (atNanos >= motionEnd[slot]) {
            return motionTo[slot];
        }
        double part = (double) (atNanos - motionStart[slot]) / (motionEnd[slot] - motionStart[slot]);
        return motionFrom[slot] + Math.round(part * (motionTo[slot] - motionFrom[slot]));
    }
}
