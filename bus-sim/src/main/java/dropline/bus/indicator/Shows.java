package dropline.bus.indicator;

import dropline.bus.chance.Draws;
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
 * display at the end of the refresh that contains the value; a needle or servo at its first motion towards it, from
 * where it stands at that instant, at its greatest speed, the short way round if the signal wraps. Until a first value
 * is applied a needle stands at the signal's least value.
 */
public final class Shows implements EventOrder.Revision {
    private static final double NANOS_PER_SECOND = 1e9;

    private final List<Layout.Slot> slots;
    private final Signal[] signals;
    private final @Nullable Refresh[] refreshes;
    private final long[] servoPhase;
    private final int[] appliedSerial;
    private final long[] plannedNanos;
    private final int[] plannedSerial;
    private final long[] motionStart;
    private final long[] motionEnd;
    private final long[] motionFrom;
    private final long[] motionTo;
    private final long[] earlierStart;
    private final long[] earlierEnd;
    private final long[] earlierFrom;
    private final long[] earlierTo;
    private @Nullable EventOrder events;

    /** All of a pit's slots, so that slot numbers are the trace's; only one segment's are ever applied here. */
    public Shows(Pit pit, Layout layout, long seed) {
        slots = layout.slots();
        int count = slots.size();
        signals = new Signal[count];
        refreshes = new Refresh[count];
        servoPhase = new long[count];
        appliedSerial = new int[count];
        plannedNanos = new long[count];
        plannedSerial = new int[count];
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
            long rest = Math.round(signal.min() / signal.resolution());
            motionFrom[i] = rest;
            motionTo[i] = rest;
            earlierFrom[i] = rest;
            earlierTo[i] = rest;
            if (slot.indicator().kind() == Indicator.Kind.SERVO) {
                String name = slot.panel().name() + "/" + slot.indicator().name();
                long stream = Draws.stream(seed, Draws.nameHash(name), Draws.Purpose.SERVO_PHASE);
                servoPhase[i] = (long) (Draws.draw(stream, 0) * slot.indicator().refreshEveryNanos());
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
        if (serial <= appliedSerial[slot]) {
            return;
        }
        appliedSerial[slot] = serial;
        EventOrder order = Objects.requireNonNull(events);
        order.post(atNanos, Rank.APPLIED, slot, serial, 0, 0, 0, heardNanos, 0, 0);
        Indicator indicator = slots.get(slot).indicator();
        switch (indicator.kind()) {
            case LAMP -> plan(order, slot, serial, atNanos + indicator.delayNanos());
            case DIGITS, CHARACTER_LCD, OLED ->
                plan(
                        order,
                        slot,
                        serial,
                        Objects.requireNonNull(refreshes[slot]).shownNanos(atNanos));
            case GAUGE_STEPPER -> move(order, slot, serial, value, atNanos + indicator.delayNanos());
            case SERVO -> move(order, slot, serial, value, servoFrame(slot, atNanos + indicator.delayNanos()));
        }
    }

    @Override
    public boolean holds(Rank rank, long atNanos, int slot, int serial) {
        return plannedNanos[slot] != atNanos || plannedSerial[slot] == serial;
    }

    private void plan(EventOrder order, int slot, int serial, long shownNanos) {
        plannedNanos[slot] = shownNanos;
        plannedSerial[slot] = serial;
        order.post(shownNanos, Rank.SHOWN, slot, serial, 0, 0);
    }

    private long servoFrame(int slot, long atNanos) {
        long every = slots.get(slot).indicator().refreshEveryNanos();
        long since = atNanos - servoPhase[slot];
        long frames = since <= 0 ? 0 : (since + every - 1) / every;
        return servoPhase[slot] + frames * every;
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
        double unitsPerNano = slots.get(slot).indicator().ratePerSecond() / signal.resolution() / NANOS_PER_SECOND;
        long takes = (long) Math.ceil(Math.abs(distance) / unitsPerNano);
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
