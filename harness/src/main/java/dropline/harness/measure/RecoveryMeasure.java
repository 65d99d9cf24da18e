package dropline.harness.measure;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.trace.TraceSink;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Folds the trace of one segment into what became of its panels after a fault: the worst latency from when it struck,
 * and when the last change that was late had been shown. Keeps no percentiles, so that many may run side by side.
 */
public final class RecoveryMeasure implements TraceSink {
    private static final int NOT_HERE = -1;

    private final Map<String, PanelRecovery> panels = new LinkedHashMap<>();
    private final SignalLog[] logs;
    private final SlotRecovery[][] slotsOfLog;
    private final SlotRecovery[] slots;
    private final ControlMeasure[] controls;
    private final PanelRecovery[] panelOfControl;
    private final int[] logIndex;
    private final int[] unsent;
    private int unsentCount;
    private long firstStateNanos = SignalLog.NEVER;
    private long lastStateNanos = SignalLog.NEVER;

    /**
     * When a fault strikes.
     *
     * @param strikesNanos the first instant that counts, ns
     * @param overNanos when the fault is over, ns; recovery counts from here
     */
    public record Span(long strikesNanos, long overNanos) {
        /** No fault at all: the whole run counts. */
        public static final Span WHOLE_RUN = new Span(0, 0);
    }

    /**
     * @param layout the pit's
     * @param segment index into the pit's segments
     * @param limits how late each panel of the segment may be, by its name
     */
    public RecoveryMeasure(Pit pit, Layout layout, int segment, Span span, Map<String, PanelLimit> limits) {
        logIndex = new int[pit.signals().size()];
        Arrays.fill(logIndex, NOT_HERE);
        addPanels(layout, segment, span, limits);
        slots = new SlotRecovery[layout.slots().size()];
        List<SignalLog> logList = new ArrayList<>();
        List<List<SlotRecovery>> showing = new ArrayList<>();
        for (int n = 0; n < slots.length; n++) {
            Layout.Slot slot = layout.slots().get(n);
            if (slot.segment() == segment) {
                if (logIndex[slot.signal()] == NOT_HERE) {
                    logIndex[slot.signal()] = logList.size();
                    logList.add(new SignalLog(pit.signals().get(slot.signal())));
                    showing.add(new ArrayList<>());
                }
                int log = logIndex[slot.signal()];
                slots[n] = new SlotRecovery(slot, logList.get(log), panel(slot.panel()));
                showing.get(log).add(slots[n]);
            }
        }
        logs = logList.toArray(new SignalLog[0]);
        slotsOfLog =
                showing.stream().map(list -> list.toArray(new SlotRecovery[0])).toArray(SlotRecovery[][]::new);
        unsent = new int[logs.length];
        controls = new ControlMeasure[layout.controls().size()];
        panelOfControl = new PanelRecovery[controls.length];
        for (int n = 0; n < controls.length; n++) {
            Layout.ControlPlace place = layout.controls().get(n);
            if (place.segment() == segment) {
                controls[n] = new ControlMeasure(place);
                panelOfControl[n] = panel(place.panel());
            }
        }
    }

    private void addPanels(Layout layout, int segment, Span span, Map<String, PanelLimit> limits) {
        for (int node = 0; node < layout.nodes().size(); node++) {
            if (layout.nodes().get(node).segment() == segment) {
                for (Panel panel : layout.nodes().get(node).node().panels()) {
                    PanelLimit limit = limits.getOrDefault(panel.name(), PanelLimit.of(panel.budget()));
                    panels.put(panel.name(), new PanelRecovery(panel, node, span, limit));
                }
            }
        }
    }

    private PanelRecovery panel(Panel panel) {
        PanelRecovery known = panels.get(panel.name());
        if (known == null) {
            throw new IllegalStateException("a panel must be on the segment of its slots: panel=" + panel.name());
        }
        return known;
    }

    @Override
    public void stateChanged(long atNanos, int signal, int serial, long value) {
        if (firstStateNanos == SignalLog.NEVER) {
            firstStateNanos = atNanos;
        }
        int index = logIndex[signal];
        if (!logs[index].hasUnsent()) {
            unsent[unsentCount++] = index;
        }
        int shown = serial;
        for (SlotRecovery slot : slotsOfLog[index]) {
            shown = Math.min(shown, slot.shownSerial());
        }
        logs[index].changed(atNanos, serial, value, lastStateNanos, shown);
        if (atNanos != firstStateNanos) {
            for (SlotRecovery slot : slotsOfLog[index]) {
                slot.changed(atNanos, serial);
            }
        }
    }

    @Override
    public void stateSent(long atNanos) {
        if (firstStateNanos == SignalLog.NEVER) {
            firstStateNanos = atNanos;
        }
        lastStateNanos = atNanos;
        for (int n = 0; n < unsentCount; n++) {
            int before = logs[unsent[n]].latestSent();
            boolean undone = logs[unsent[n]].sent(atNanos) > 0;
            for (SlotRecovery slot : slotsOfLog[unsent[n]]) {
                slot.sent(before, undone);
            }
        }
        unsentCount = 0;
    }

    @Override
    public void shown(long atNanos, int slot, int serial) {
        slots[slot].shown(atNanos, serial);
    }

    @Override
    public void moved(long atNanos, int slot, long from, long untilNanos, long to) {
        slots[slot].moved(atNanos, untilNanos, to);
    }

    @Override
    public void reset(long atNanos, int node, long readyNanos) {
        for (SlotRecovery[] showing : slotsOfLog) {
            for (SlotRecovery slot : showing) {
                if (slot.node() == node) {
                    slot.forgot(atNanos);
                }
            }
        }
    }

    @Override
    public void controlMoved(long atNanos, int control, int serial, int value) {
        controls[control].moved(atNanos, serial, value);
    }

    @Override
    public void sampled(long atNanos, int control, int serial) {
        controls[control].sampled(serial);
    }

    @Override
    public void told(long atNanos, int control, int serial) {
        long before = controls[control].latency().count();
        controls[control].told(atNanos, serial);
        if (controls[control].latency().count() > before) {
            panelOfControl[control].told(atNanos, controls[control].latency().lastNanos());
        }
    }

    @Override
    public void ended(long atNanos) {
        for (SlotRecovery[] showing : slotsOfLog) {
            for (SlotRecovery slot : showing) {
                slot.ended(atNanos);
            }
        }
        for (int n = 0; n < controls.length; n++) {
            if (controls[n] != null) {
                controls[n].ended(atNanos);
                panelOfControl[n].controlEnded(controls[n]);
            }
        }
    }

    /** What became of the segment's panels, in the order of the description; once the run has ended. */
    public List<PanelRecovery> panels() {
        return List.copyOf(panels.values());
    }
}
