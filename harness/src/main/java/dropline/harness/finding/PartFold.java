package dropline.harness.finding;

import dropline.bus.pit.Indicator;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Signal;
import java.util.List;

/** Folds what indicators show against what was applied, and what controls report against what was moved. */
final class PartFold {
    /** Latest values kept of each signal: more than any indicator lags behind. */
    private static final int KEPT = 256;

    private static final long MARGIN_NANOS = 60_000_000L;
    private static final long SECOND_NANOS = 1_000_000_000L;

    private final SlotEvidence[] slots;
    private final ControlEvidence[] controls;
    private final Indicator[] indicators;
    private final Signal[] signals;
    private final int[] signalOf;
    private final long[] limitNanos;
    private final long[] heardLimit;
    private final NodeEvidence[] nodeOfSlot;
    private final long[][] values;
    private final int[] newest;
    private final long[] believeNanos;

    /** The arrays are by index of the pit's layout, null where a part is not the segment's. */
    PartFold(
            Pit pit,
            Layout layout,
            NodeEvidence[] nodes,
            Promise[] promises,
            SlotEvidence[] slots,
            ControlEvidence[] controls) {
        this.slots = slots;
        this.controls = controls;
        int count = slots.length;
        indicators = new Indicator[count];
        signals = new Signal[count];
        signalOf = new int[count];
        limitNanos = new long[count];
        heardLimit = new long[count];
        nodeOfSlot = new NodeEvidence[count];
        values = new long[pit.signals().size()][0];
        newest = new int[pit.signals().size()];
        for (int i = 0; i < count; i++) {
            Layout.Slot slot = layout.slots().get(i);
            indicators[i] = slot.indicator();
            signalOf[i] = slot.signal();
            signals[i] = pit.signals().get(slot.signal());
            nodeOfSlot[i] = nodes[slot.node()];
            if (slots[i] != null) {
                limitNanos[i] = slot.indicator().longestShowingNanos(signals[i])
                        + promises[slot.node()].mostLoopNanos()
                        + MARGIN_NANOS;
                heardLimit[i] = promises[slot.node()].mostWaitNanos();
                values[slot.signal()] = new long[KEPT];
            }
        }
        believeNanos = new long[controls.length];
        List<Layout.ControlPlace> places = layout.controls();
        for (int i = 0; i < controls.length; i++) {
            // what a program believes is known only from what it says
            believeNanos[i] = layout.nodes().get(places.get(i).node()).node().program() == null
                    ? places.get(i).control().longestBelievingNanos()
                    : Long.MAX_VALUE;
        }
    }

    // --- indicators

    void stateChanged(int signal, int serial, long value) {
        newest[signal] = serial;
        if (values[signal].length > 0) {
            values[signal][serial % KEPT] = value;
        }
    }

    int nodeOf(int slot) {
        return nodeOfSlot[slot].node;
    }

    void applied(long at, int index, int serial, long heardNanos) {
        SlotEvidence slot = slots[index];
        slot.applied++;
        if (at - heardNanos > heardLimit[index]) {
            nodeOfSlot[index].slowApplied.add(at, at - heardNanos);
        }
        check(at, slot, index);
        if (slot.pendingNanos < 0 || indicators[index].kind().mustArrive()) {
            slot.pendingNanos = Math.max(at, slot.zeroedNanos);
            slot.overdue = false;
        }
        slot.pendingSerial = serial;
    }

    void shown(long at, int index, int serial) {
        SlotEvidence slot = slots[index];
        slot.shown++;
        check(at, slot, index);
        if (serial >= slot.pendingSerial) {
            slot.pendingNanos = -1;
        } else {
            slot.pendingNanos = at;
        }
        slot.overdue = false;
        slot.aimedSerial = serial;
        if (slot.moving && !indicators[index].motion().isInPieces()) {
            slot.moving = false;
            arrived(at, slot, index);
        }
    }

    void moved(long at, int index, long from, long until, long to) {
        SlotEvidence slot = slots[index];
        boolean piece = slot.moving && indicators[index].motion().isInPieces();
        boolean goesOn = piece && at == slot.restNanos;
        if (piece && at > slot.restNanos) {
            arrived(at, slot, index);
        }
        slot.moving = true;
        slot.movedFrom = goesOn ? slot.movedFrom : from;
        slot.movedTo = to;
        slot.restNanos = until;
    }

    /** A node restarted: what its needles were sent to is forgotten, and they may have to find their zero first. */
    void reset(int node, long ready) {
        for (int i = 0; i < slots.length; i++) {
            if (slots[i] != null && nodeOfSlot[i].node == node) {
                slots[i].aimedSerial = 0;
                slots[i].pendingNanos = -1;
                slots[i].zeroedNanos = ready + indicators[i].motion().longestZeroingNanos(signals[i]);
            }
        }
    }

    private void arrived(long at, SlotEvidence slot, int index) {
        int signal = signalOf[index];
        if (slot.aimedSerial == 0 || newest[signal] - slot.aimedSerial >= KEPT) {
            return;
        }
        long wanted = values[signal][slot.aimedSerial % KEPT];
        slot.error(at, signals[index].difference(slot.movedTo, wanted), slot.movedTo - slot.movedFrom);
    }

    private void check(long at, SlotEvidence slot, int index) {
        if (slot.pendingNanos >= 0 && !slot.overdue && at - slot.pendingNanos > limitNanos[index]) {
            slot.overdue = true;
            slot.frozen.add(at, at - slot.pendingNanos);
        }
    }

    // --- controls

    void controlMoved(long at, int index, int serial) {
        ControlEvidence control = controls[index];
        settle(at, index, control);
        control.moves++;
        control.waitingSerial = serial;
        control.waitingNanos = at;
    }

    void sampled(long at, int index, int serial) {
        ControlEvidence control = controls[index];
        if (control.waitingNanos >= 0 && serial >= control.waitingSerial) {
            control.waitingNanos = -1;
        } else {
            control.invented.add(at, 1);
        }
        control.believedSerial = serial;
    }

    void told(long at, int index, int serial) {
        ControlEvidence control = controls[index];
        control.told.add(at, serial - control.toldSerial);
        control.toldInSecond = at / SECOND_NANOS == control.toldSecond ? control.toldInSecond : 0;
        control.toldSecond = at / SECOND_NANOS;
        control.toldInSecond += serial - control.toldSerial;
        control.mostToldInASecond = Math.max(control.mostToldInASecond, control.toldInSecond);
        control.toldSerial = serial;
    }

    private void settle(long at, int index, ControlEvidence control) {
        if (control.waitingNanos >= 0 && at - control.waitingNanos > believeNanos[index]) {
            control.missed.add(control.waitingNanos, 1);
        }
        control.waitingNanos = -1;
    }

    void ended(long at) {
        for (int i = 0; i < slots.length; i++) {
            if (slots[i] != null) {
                check(at, slots[i], i);
                if (slots[i].moving && indicators[i].motion().isInPieces() && at >= slots[i].restNanos) {
                    arrived(at, slots[i], i);
                }
            }
        }
        for (int i = 0; i < controls.length; i++) {
            if (controls[i] != null) {
                settle(at, i, controls[i]);
            }
        }
    }
}
