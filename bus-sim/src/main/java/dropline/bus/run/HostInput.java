package dropline.bus.run;

import dropline.bus.chance.Draws;
import dropline.bus.chance.Draws.Purpose;
import dropline.bus.control.Controls;
import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.host.StateBlock;
import dropline.bus.pit.Adapter;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Hub;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.trace.EventOrder;
import dropline.bus.trace.Rank;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What reaches a segment from outside, in order of time: recorded changes, the host's state instants, their arrival at
 * the controller (a hub board has them one USB lead later), and moves of the segment's controls; and what its parts do
 * by themselves.
 */
final class HostInput {
    private static final long NEVER = Long.MAX_VALUE;

    /** Takes a change once the controller has it. */
    interface Arrival {
        void arrive(long atNanos, int signal, int serial, long value);
    }

    private final int segmentIndex;
    private final Layout layout;
    private final Controls controls;
    private final EventOrder events;
    private final Arrival arrival;
    private final @Nullable PartSteps parts;
    private final Fault @Nullable [] silences;
    private final boolean[] wanted;
    private final long periodNanos;
    private final Adapter lead;
    private final long usbStream;
    private final long wakeStream;

    private final StateBlock none = new StateBlock();
    private StateBlock block = none;
    private int row;
    private int move;
    private long nextInstant;
    private long states;

    private final int[] serial;
    private final long[] value;
    private final int[] changed;
    private final boolean[] isChanged;
    private int changedCount;

    private long[] underWayNanos = new long[64];
    private int[] underWaySignal = new int[64];
    private int[] underWaySerial = new int[64];
    private long[] underWayValue = new long[64];
    private int first;
    private int end;
    private long lastArrival;

    HostInput(
            Pit pit,
            Layout layout,
            int segmentIndex,
            long seed,
            Controls controls,
            EventOrder events,
            Arrival arrival,
            List<Fault> faults,
            @Nullable PartSteps parts) {
        this.parts = parts;
        silences = silences(faults);
        this.segmentIndex = segmentIndex;
        this.layout = layout;
        this.controls = controls;
        this.events = events;
        this.arrival = arrival;
        int count = pit.signals().size();
        wanted = new boolean[count];
        for (Layout.Slot slot : layout.slots()) {
            wanted[slot.signal()] |= slot.segment() == segmentIndex;
        }
        Segment segment = pit.segments().get(segmentIndex);
        periodNanos = pit.statePeriodNanos();
        nextInstant = periodNanos == 0 ? NEVER : 0;
        lead = segment.controller().kind() == Controller.Kind.HUB
                ? segment.controller().adapter()
                : Adapter.NONE;
        long way = Draws.nameHash(way(pit, segmentIndex));
        usbStream = Draws.stream(seed, way, Purpose.STATE_USB);
        wakeStream = Draws.stream(seed, way, Purpose.STATE_WAKE_UP);
        serial = new int[count];
        value = new long[count];
        changed = new int[count];
        isChanged = new boolean[count];
    }

    /** What the draws of the way in hang on: a board has a state once for all its segments. */
    private static String way(Pit pit, int segmentIndex) {
        Hub hub = pit.hubOf(segmentIndex);
        return hub == null || hub.segments().size() == 1
                ? pit.segments().get(segmentIndex).name()
                : hub.name();
    }

    /** The next stretch of state. */
    void offer(StateBlock next) {
        block = next;
        row = 0;
        move = 0;
    }

    /** Lets go of the block, which must have been used up: whoever filled it may fill it again. */
    void finish() {
        if (row < block.rows() || move < block.moves()) {
            throw new IllegalStateException("a block must end before the instant advanced to: row=" + row + " of "
                    + block.rows() + " move=" + move + " of " + block.moves());
        }
        block = none;
        row = 0;
        move = 0;
    }

    /** When something comes next. */
    long nextNanos() {
        long next = Math.min(nextInstant, first < end ? underWayNanos[first] : NEVER);
        if (parts != null) {
            next = Math.min(next, parts.nextNanos());
        }
        if (row < block.rows()) {
            next = Math.min(next, block.rowNanos(row));
        }
        return move < block.moves() ? Math.min(next, block.moveNanos(move)) : next;
    }

    /** Lets the one thing happen that comes next. */
    void step() {
        long at = nextNanos();
        if (row < block.rows() && block.rowNanos(row) == at) {
            takeRow(at);
        } else if (move < block.moves() && block.moveNanos(move) == at) {
            int control = block.moveControl(move);
            if (layout.controls().get(control).segment() == segmentIndex) {
                controls.move(at, control, block.moveValue(move));
            }
            move++;
        } else if (nextInstant == at) {
            nextInstant += periodNanos;
            send(at);
        } else if (parts != null && parts.nextNanos() == at) {
            parts.step();
        } else {
            arrival.arrive(at, underWaySignal[first], underWaySerial[first], underWayValue[first]);
            first++;
            if (first == end) {
                first = 0;
                end = 0;
            }
        }
    }

    private void takeRow(long at) {
        for (int i = block.firstChange(row); i < block.endChange(row); i++) {
            int signal = block.signal(i);
            if (wanted[signal]) {
                value[signal] = block.value(i);
                events.post(at, Rank.STATE_CHANGED, signal, ++serial[signal], 0, 0, 0, value[signal], 0, 0);
                if (!isChanged[signal]) {
                    isChanged[signal] = true;
                    changed[changedCount++] = signal;
                }
            }
        }
        row++;
        if (periodNanos == 0) {
            send(at);
        }
    }

    private void send(long at) {
        if (silences != null && isSilent(silences, at)) {
            states++;
            return;
        }
        events.post(at, Rank.STATE_SENT, 0, 0, 0, 0);
        long late = (long) (Draws.draw(usbStream, states) * lead.frameNanos())
                + lead.wakeUp().sampleNanos(Draws.draw(wakeStream, states));
        states++;
        lastArrival = Math.max(lastArrival, at + late);
        for (int i = 0; i < changedCount; i++) {
            int signal = changed[i];
            isChanged[signal] = false;
            if (late == 0 && first == end) {
                arrival.arrive(at, signal, serial[signal], value[signal]);
            } else {
                put(signal);
            }
        }
        changedCount = 0;
    }

    private static boolean isSilent(Fault[] silences, long at) {
        for (Fault silence : silences) {
            if (silence.spans(at)) {
                return true;
            }
        }
        return false;
    }

    private static Fault @Nullable [] silences(List<Fault> faults) {
        List<Fault> found = new ArrayList<>(faults);
        found.removeIf(fault -> fault.kind() != FaultKind.SILENT_HOST);
        return found.isEmpty() ? null : found.toArray(Fault[]::new);
    }

    private void put(int signal) {
        if (end == underWayNanos.length) {
            System.arraycopy(underWayNanos, first, underWayNanos, 0, end - first);
            System.arraycopy(underWaySignal, first, underWaySignal, 0, end - first);
            System.arraycopy(underWaySerial, first, underWaySerial, 0, end - first);
            System.arraycopy(underWayValue, first, underWayValue, 0, end - first);
            end -= first;
            first = 0;
            if (end > underWayNanos.length / 2) {
                int size = underWayNanos.length * 2;
                underWayNanos = Arrays.copyOf(underWayNanos, size);
                underWaySignal = Arrays.copyOf(underWaySignal, size);
                underWaySerial = Arrays.copyOf(underWaySerial, size);
                underWayValue = Arrays.copyOf(underWayValue, size);
            }
        }
        underWayNanos[end] = lastArrival;
        underWaySignal[end] = signal;
        underWaySerial[end] = serial[signal];
        underWayValue[end++] = value[signal];
    }
}
