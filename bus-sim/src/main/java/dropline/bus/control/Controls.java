package dropline.bus.control;

import dropline.bus.chance.Draws;
import dropline.bus.fault.Fault;
import dropline.bus.pit.Control;
import dropline.bus.pit.Layout;
import dropline.bus.trace.EventOrder;
import dropline.bus.trace.Rank;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * The controls of a segment: what was moved, what their nodes believe, what the host was told. A contact is believed
 * once it has bounced out and held still for its debounce time; one moved again before that was never seen. Encoders
 * and axes are read at once; an axis that moved no further than its dead band is not reported, nor is a lever that
 * stays in its detent. Contacts that break before they make are open in between: that is a move of its own where they
 * are open for longer than the debounce time, so that the node may believe it, and else nobody's business. A key matrix
 * is believed when its rows have been scanned.
 *
 * <p>Serials count what ought to be noticed: a contact's moves, a button's presses, an encoder's, an axis's and a
 * lever's changes; and, where something is wrong, what a node notices though nobody moved anything.
 */
public final class Controls implements EventOrder.Revision {
    private static final long NEVER = Long.MAX_VALUE;

    private final List<Layout.ControlPlace> places;
    private final EventOrder events;
    private final long[] bounceStream;
    private final int[] serial;
    private final int[] believed;
    private final int[] told;
    private final int[] candidate;
    private final long[] candidateNanos;
    private final int[] reported;
    private final int[] candidateValue;
    private final int[] believedValue;
    private final long[] arrivalNanos;
    private final int[] arrivalValue;
    private final boolean arrive;
    private final @Nullable ControlFaults faults;
    private final @Nullable Wired[] wired;
    private long nextArrivalNanos = NEVER;

    /** All of a pit's controls, so that numbers are the trace's; nothing is wrong with any of them. */
    public Controls(Layout layout, long seed, EventOrder events) {
        this(layout, 0, seed, events, List.of());
    }

    /**
     * All of a pit's controls; only one segment's are ever moved here.
     *
     * @param segment that segment's index
     * @param faults what goes wrong; those of other segments are left out
     */
    public Controls(Layout layout, int segment, long seed, EventOrder events, List<Fault> faults) {
        this.faults = ControlFaults.of(layout, segment, seed, faults);
        this.places = layout.controls();
        this.events = events;
        int count = places.size();
        bounceStream = new long[count];
        wired = new Wired[count];
        serial = new int[count];
        believed = new int[count];
        told = new int[count];
        candidate = new int[count];
        candidateNanos = new long[count];
        reported = new int[count];
        candidateValue = new int[count];
        believedValue = new int[count];
        arrivalNanos = new long[count];
        Arrays.fill(arrivalNanos, NEVER);
        arrivalValue = new int[count];
        boolean anyArrives = false;
        for (int i = 0; i < count; i++) {
            Control control = places.get(i).control();
            bounceStream[i] = Draws.stream(seed, Draws.nameHash(control.name()), Draws.Purpose.BOUNCE);
            reported[i] = rest(control);
            believedValue[i] = reported[i];
            anyArrives |= places.get(i).segment() == segment && isSeenOpen(control);
        }
        arrive = anyArrives;
    }

    /** Where it stands until it is moved: at 0, or in the detent nearest to it. */
    private static int rest(Control control) {
        return control.kind() == Control.Kind.LEVER
                ? control.detent(control.detents().get(0).position(), 0)
                : 0;
    }

    /** From now on a control is moved by a hand; what its node makes of that is told by {@link #reports}. */
    public void wire(int index, Wired.Hand hand) {
        wired[index] = new Wired(places.get(index).control(), hand);
    }

    /** Whether it is moved by a hand. */
    public boolean isWired(int index) {
        return wired[index] != null;
    }

    /**
     * A node reports the value of a control that is moved by a hand: of the moves after the last that was told, it has
     * seen the newest that left it so.
     *
     * @param believedNanos when the reply began: the node believed it by then
     * @param toldNanos when the host is told
     */
    public void reports(int index, int value, long believedNanos, long toldNanos) {
        int seen = Objects.requireNonNull(wired[index]).serialOf(value, told[index]);
        if (seen > 0) {
            believed[index] = seen;
            believedValue[index] = value;
            events.post(believedNanos, Rank.SAMPLED, index, seen, 0, 0);
            tell(toldNanos, index, seen);
        }
    }

    /** A person moves a control; moves come in order of time. */
    public void move(long atNanos, int index, int value) {
        Control control = places.get(index).control();
        Wired hand = wired[index];
        if (hand != null) {
            if (hand.counts(value)) {
                int now = ++serial[index];
                events.post(atNanos, Rank.CONTROL_MOVED, index, now, hand.counted(now, value), 0);
            }
            hand.move(atNanos, value, (long) (Draws.draw(bounceStream[index], serial[index]) * control.bounceNanos()));
            return;
        }
        settle(index, atNanos);
        switch (control.kind()) {
            case TOGGLE, HELD_TOGGLE, HELD_BUTTON -> contact(atNanos, index, value, 0);
            case BUTTON -> {
                if (value != 0) {
                    contact(atNanos, index, value, 0);
                } else {
                    candidate[index] = 0;
                }
            }
            case SELECTOR, THREE_WAY_TOGGLE ->
                throwOver(atNanos, index, control.positions().held(value));
            case KEY_MATRIX ->
                contact(
                        atNanos,
                        index,
                        value & Objects.requireNonNull(control.matrix()).allKeys(),
                        0);
            case ENCODER -> read(atNanos, index, value);
            case AXIS -> {
                if (Math.abs(value - reported[index]) > control.deadBand()) {
                    read(atNanos, index, value);
                }
            }
            case LEVER -> {
                int detent = control.detent(reported[index], value);
                if (detent != reported[index]) {
                    read(atNanos, index, detent);
                }
            }
        }
    }

    /** The serial of what a control's node believes at an instant: what a reply made then reports. */
    public int believed(int index, long atNanos) {
        settle(index, atNanos);
        return believed[index];
    }

    /** The value its node last believed: a position, or a count modulo 2^16. */
    public int value(int index) {
        return believedValue[index];
    }

    /** The host is told of a control's state; tells of it once. */
    public void tell(long atNanos, int index, int reportedSerial) {
        if (reportedSerial > told[index]) {
            told[index] = reportedSerial;
            events.post(atNanos, Rank.TOLD, index, reportedSerial, 0, 0);
        }
    }

    @Override
    public boolean holds(Rank rank, long atNanos, int index, int believedSerial) {
        return candidate[index] == believedSerial || believed[index] == believedSerial;
    }

    /** When a control next arrives, or seems to move by itself, ns; {@link Long#MAX_VALUE} if none will. */
    public long nextNanos() {
        return faults == null ? nextArrivalNanos : Math.min(nextArrivalNanos, faults.nextNanos());
    }

    /** Lets that happen. */
    public void step() {
        if (faults != null && faults.nextNanos() < nextArrivalNanos) {
            faults.step(this);
            return;
        }
        long at = nextArrivalNanos;
        for (int i = 0; i < arrivalNanos.length; i++) {
            if (arrivalNanos[i] == at) {
                arrivalNanos[i] = NEVER;
                settle(i, at);
                contact(at, i, arrivalValue[i], 0);
            }
        }
        findNextArrival();
    }

    /** Whether a control does something by itself, so that {@link #step} must be called in time. */
    public boolean mustStep() {
        return arrive || (faults != null && faults.moveThemselves());
    }

    /** Whether a node may believe a control's contacts to be open between two positions. */
    private static boolean isSeenOpen(Control control) {
        return control.positions().openNanos() > control.debounceNanos();
    }

    private void throwOver(long atNanos, int index, int position) {
        Control control = places.get(index).control();
        int from = reported[index];
        boolean opens = control.kind() == Control.Kind.SELECTOR || Math.abs(position - from) > 1;
        reported[index] = position;
        if (!opens || !isSeenOpen(control)) {
            contact(atNanos, index, position, opens ? control.positions().openNanos() : 0);
            return;
        }
        if (arrivalNanos[index] == NEVER) {
            contact(atNanos, index, control.positions().openValue(), 0);
        }
        arrivalValue[index] = position;
        arrivalNanos[index] = atNanos + control.positions().openNanos();
        findNextArrival();
    }

    private void findNextArrival() {
        nextArrivalNanos = NEVER;
        for (long nanos : arrivalNanos) {
            nextArrivalNanos = Math.min(nextArrivalNanos, nanos);
        }
    }

    /** @param laterNanos how long after the move its contact closes */
    private void contact(long atNanos, int index, int value, long laterNanos) {
        Control control = places.get(index).control();
        int now = ++serial[index];
        events.post(atNanos, Rank.CONTROL_MOVED, index, now, value, 0);
        if (faults != null && faults.skips(index, atNanos, now, 1)) {
            return;
        }
        long bounce = (long) (Draws.draw(bounceStream[index], now) * control.bounceNanos());
        candidate[index] = now;
        candidateValue[index] = control.kind().counts() ? now - skipped(index) : value;
        candidateNanos[index] = atNanos + laterNanos + bounce + control.debounceNanos();
        if (control.matrix() != null) {
            scan(index, control.matrix(), value);
        }
        events.post(candidateNanos[index], Rank.SAMPLED, index, candidate[index], 0, 0);
    }

    /** Its rows are scanned first; and what ghosts add is believed under a serial that nobody's move has. */
    private void scan(int index, Control.Matrix matrix, int down) {
        int seen = matrix.seen(down);
        if (seen != down) {
            candidate[index] = ++serial[index];
        }
        candidateValue[index] = seen;
        candidateNanos[index] = matrix.scannedNanos(believedValue[index], seen, candidateNanos[index]);
    }

    private void read(long atNanos, int index, int value) {
        int now = ++serial[index];
        int step = value - reported[index];
        reported[index] = value;
        events.post(atNanos, Rank.CONTROL_MOVED, index, now, value, 0);
        if (faults == null || !faults.skips(index, atNanos, now, step)) {
            believe(atNanos, index, now, value - skipped(index));
        }
    }

    private int skipped(int index) {
        return faults == null ? 0 : faults.skipped(index);
    }

    private void believe(long atNanos, int index, int now, int value) {
        believed[index] = now;
        believedValue[index] = value;
        events.post(atNanos, Rank.SAMPLED, index, now, 0, 0);
    }

    /**
     * A node believes a change that nobody made; returns its serial. While a contact that a person moved has not come
     * to rest nothing is noticed, and 0 returned.
     */
    int seem(long atNanos, int index, int value) {
        settle(index, atNanos);
        if (candidate[index] > believed[index]) {
            return 0;
        }
        int now = ++serial[index];
        believe(atNanos, index, now, value);
        return now;
    }

    /** The position or count that a person last gave a control, as far as it was to be reported. */
    int reported(int index) {
        return reported[index];
    }

    private void settle(int index, long atNanos) {
        if (candidate[index] > believed[index] && candidateNanos[index] <= atNanos) {
            believed[index] = candidate[index];
            believedValue[index] = candidateValue[index];
        }
    }
}
