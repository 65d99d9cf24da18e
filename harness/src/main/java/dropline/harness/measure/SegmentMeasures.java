package dropline.harness.measure;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.trace.TraceSink;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Folds the trace of one segment into figures: of its slots, panels and controls, and of its wire. Needs the controller
 * and inside tiers; without the wire tier it only lacks clashes. Once warm it allocates nothing but room for longer
 * times.
 */
public final class SegmentMeasures implements TraceSink {
    private static final int NOT_HERE = -1;

    private final int segment;
    private final BusMeasure bus;
    private final FrameLog frames;
    private final List<PanelMeasure> panels = new ArrayList<>();
    private final SlotMeasure[] slots;
    private final SignalLog[] logs;
    private final SlotMeasure[][] slotsOfLog;
    private final ControlMeasure[] controls;
    /** From the pit's numbers to this segment's. */
    private final int[] slotIndex;

    private final int[] logIndex;
    private final int[] controlIndex;
    private final int[] unsent;
    private int unsentCount;
    private long firstStateNanos = SignalLog.NEVER;
    private long lastStateNanos = SignalLog.NEVER;
    private long leastStateGapNanos = Long.MAX_VALUE;
    private long endNanos;

    /** {@code layout} is the pit's; {@code segment} an index into its segments. */
    public SegmentMeasures(Pit pit, Layout layout, int segment) {
        this.segment = segment;
        bus = new BusMeasure(layout.nodes().size());
        frames = new FrameLog(layout.nodes().size(), charPicos(pit.segments().get(segment)));
        slotIndex = filled(layout.slots().size());
        logIndex = filled(pit.signals().size());
        controlIndex = filled(layout.controls().size());
        List<SignalLog> logList = new ArrayList<>();
        List<SlotMeasure> slotList = new ArrayList<>();
        Map<String, PanelMeasure> panelByName = new LinkedHashMap<>();
        for (int n = 0; n < layout.slots().size(); n++) {
            Layout.Slot slot = layout.slots().get(n);
            if (slot.segment() != segment) {
                continue;
            }
            if (logIndex[slot.signal()] == NOT_HERE) {
                logIndex[slot.signal()] = logList.size();
                logList.add(new SignalLog(pit.signals().get(slot.signal())));
            }
            Panel panel = slot.panel();
            PanelMeasure panelMeasure =
                    panelByName.computeIfAbsent(panel.name(), name -> new PanelMeasure(panel, slot.node(), frames));
            SlotMeasure measure = new SlotMeasure(slot, logList.get(logIndex[slot.signal()]), panelMeasure);
            panelMeasure.add(measure);
            slotIndex[n] = slotList.size();
            slotList.add(measure);
        }
        panels.addAll(panelByName.values());
        slots = slotList.toArray(new SlotMeasure[0]);
        logs = logList.toArray(new SignalLog[0]);
        unsent = new int[logs.length];
        slotsOfLog = new SlotMeasure[logs.length][];
        for (int i = 0; i < logs.length; i++) {
            slotsOfLog[i] = slotsShowing(i);
        }
        controls = controlsOf(layout);
    }

    private static long charPicos(Segment segment) {
        return segment.format().bits() * 1_000_000_000_000L / segment.baud();
    }

    private static int[] filled(int length) {
        int[] indices = new int[length];
        Arrays.fill(indices, NOT_HERE);
        return indices;
    }

    private SlotMeasure[] slotsShowing(int log) {
        List<SlotMeasure> showing = new ArrayList<>();
        for (SlotMeasure slot : slots) {
            if (logIndex[slot.slot().signal()] == log) {
                showing.add(slot);
            }
        }
        return showing.toArray(new SlotMeasure[0]);
    }

    private ControlMeasure[] controlsOf(Layout layout) {
        List<ControlMeasure> here = new ArrayList<>();
        for (int n = 0; n < layout.controls().size(); n++) {
            if (layout.controls().get(n).segment() == segment) {
                controlIndex[n] = here.size();
                here.add(new ControlMeasure(layout.controls().get(n)));
            }
        }
        return here.toArray(new ControlMeasure[0]);
    }

    @Override
    public void stateChanged(long atNanos, int signal, int serial, long value) {
        if (firstStateNanos == SignalLog.NEVER) {
            firstStateNanos = atNanos;
        }
        int index = logIndex[signal];
        SignalLog log = logs[index];
        if (!log.hasUnsent()) {
            unsent[unsentCount++] = index;
        }
        int shown = serial;
        for (SlotMeasure slot : slotsOfLog[index]) {
            shown = Math.min(shown, slot.newestShown());
        }
        log.changed(atNanos, serial, value, lastStateNanos, shown);
        for (SlotMeasure slot : slotsOfLog[index]) {
            slot.changed(atNanos, serial, value, atNanos == firstStateNanos);
        }
    }

    @Override
    public void stateSent(long atNanos) {
        if (firstStateNanos == SignalLog.NEVER) {
            firstStateNanos = atNanos;
        }
        if (lastStateNanos != SignalLog.NEVER) {
            leastStateGapNanos = Math.min(leastStateGapNanos, atNanos - lastStateNanos);
        }
        lastStateNanos = atNanos;
        for (int n = 0; n < unsentCount; n++) {
            SignalLog log = logs[unsent[n]];
            int before = log.latestSent();
            int undone = log.sent(atNanos);
            for (SlotMeasure slot : slotsOfLog[unsent[n]]) {
                slot.sent(atNanos, before, undone);
            }
        }
        unsentCount = 0;
        for (int n = 0; n < logs.length; n++) {
            if (logs[n].latest() > 0) {
                long value = logs[n].value(logs[n].latest());
                for (SlotMeasure slot : slotsOfLog[n]) {
                    slot.age.stateSent(atNanos, value);
                }
            }
        }
    }

    @Override
    public void queued(long atNanos, int destination, int signal, int serial) {
        for (SlotMeasure slot : slotsOfLog[logIndex[signal]]) {
            if (destination == ALL || destination == slot.slot.node()) {
                slot.queued(atNanos, serial);
            }
        }
    }

    @Override
    public void coalesced(long atNanos, int destination, int signal, int serial) {
        for (SlotMeasure slot : slotsOfLog[logIndex[signal]]) {
            if (destination == ALL || destination == slot.slot.node()) {
                slot.countCoalesced();
            }
        }
    }

    @Override
    public void carried(long atNanos, int destination, int signal, int serial, int transaction) {
        bus.carried(atNanos);
        if (logIndex[signal] == NOT_HERE) {
            return;
        }
        for (SlotMeasure slot : slotsOfLog[logIndex[signal]]) {
            if (destination == ALL || destination == slot.slot.node()) {
                slot.journeys.carried(atNanos, serial);
            }
        }
    }

    @Override
    public void applied(long atNanos, int slot, int serial, long heardNanos) {
        slots[slotIndex[slot]].journeys.applied(atNanos, serial, heardNanos);
    }

    @Override
    public void shown(long atNanos, int slot, int serial) {
        slots[slotIndex[slot]].shown(atNanos, serial, lastStateNanos);
    }

    @Override
    public void moved(long atNanos, int slot, long from, long untilNanos, long to) {
        slots[slotIndex[slot]].moved(atNanos, from, untilNanos, to);
    }

    @Override
    public void frameStarted(long atNanos, int talker, int frame, int node, int transaction, int chars) {
        frames.started(atNanos, talker, frame, node, transaction, chars);
        bus.frameStarted(atNanos, frame, transaction);
    }

    @Override
    public void frameEnded(long atNanos, int talker, int frame, int node, int transaction) {
        frames.ended(atNanos, talker);
        bus.frameEnded(atNanos);
    }

    @Override
    public void answered(long atNanos, int node, int transaction, int attempt, long gapNanos) {
        bus.answered(node, gapNanos);
    }

    @Override
    public void timedOut(long atNanos, int node, int transaction, int attempt) {
        bus.countTimeOut(node);
        frames.mishap(atNanos, FrameLog.TIME_OUT, node);
    }

    @Override
    public void gaveUp(long atNanos, int node, int transaction) {
        bus.countGivenUp();
    }

    @Override
    public void backedOff(long atNanos, int node, long untilNanos) {
        bus.countBackOff();
    }

    @Override
    public void cycleStarted(long atNanos, int cycle) {
        bus.cycleStarted(atNanos);
    }

    @Override
    public void clash(long atNanos, int talker, int other) {
        bus.countClash(talker, other);
        frames.clash(atNanos, talker, other);
    }

    @Override
    public void receivedWrong(long atNanos, int receiver, int talker, int transaction) {
        bus.countWrong();
    }

    @Override
    public void phantom(long atNanos, int receiver, int chars) {
        bus.countWrong();
    }

    @Override
    public void overrun(long atNanos, int node, int transaction) {
        bus.countOverrun(node);
        frames.mishap(atNanos, FrameLog.OVERRUN, node);
    }

    @Override
    public void reset(long atNanos, int node, long readyNanos) {
        for (SlotMeasure slot : slots) {
            if (slot.slot.node() == node) {
                slot.reset(atNanos);
            }
        }
    }

    @Override
    public void controlMoved(long atNanos, int control, int serial, int value) {
        controls[controlIndex[control]].moved(atNanos, serial, value);
    }

    @Override
    public void sampled(long atNanos, int control, int serial) {
        controls[controlIndex[control]].sampled(serial);
    }

    @Override
    public void told(long atNanos, int control, int serial) {
        controls[controlIndex[control]].told(atNanos, serial);
    }

    @Override
    public void ended(long atNanos) {
        endNanos = atNanos;
        bus.ended(atNanos);
        for (SlotMeasure slot : slots) {
            slot.ended(atNanos);
        }
        for (ControlMeasure control : controls) {
            control.ended(atNanos);
        }
    }

    /** Index into {@link Pit#segments()}. */
    public int segment() {
        return segment;
    }

    public BusMeasure bus() {
        return bus;
    }

    /** Panels that show something, in the order of the description. */
    public List<PanelMeasure> panels() {
        return List.copyOf(panels);
    }

    /** In the order of the description. */
    public List<ControlMeasure> controls() {
        return List.of(controls);
    }

    /** The shortest time between two states of the host, ns; 0 if there were none. */
    public long leastStateGapNanos() {
        return leastStateGapNanos == Long.MAX_VALUE ? 0 : leastStateGapNanos;
    }

    /** When the run ended, ns; 0 while it has not. */
    public long endNanos() {
        return endNanos;
    }
}
