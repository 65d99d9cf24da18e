package dropline.harness.power;

import dropline.bus.pit.Draws;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Indicator.Kind;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Signal;
import dropline.bus.run.SegmentRun;
import dropline.bus.supply.PartCurrent;
import dropline.harness.replay.WatchedRun;
import java.util.Arrays;
import java.util.List;

/**
 * Follows what every indicator of a segment takes, from the trace alone, and notes each change of it until it is
 * fetched. A run begins with everything at rest. A motor takes its current from the first to the last instant of a
 * motion; what lights, by the value it shows; a flag, while it turns, reckoned from its node's having the value.
 */
final class CurrentWatch implements WatchedRun.Watcher {
    /** Values of a signal that are remembered: what shows an older one is taken to show the latest. */
    private static final int VALUES = 256;

    private final Pit pit;
    private final List<Layout.Slot> slots;
    /** The first slot of each slot's indicator stands for the indicator. */
    private final int[] first;

    private final boolean[] counts;
    private final double[] slotShare;
    private final double[] share;
    private final boolean[] moving;
    private final long[] movingUntil;
    private final long[][] values;
    private final Changes changes = new Changes();

    CurrentWatch(Pit pit, Layout layout, int segment) {
        this.pit = pit;
        slots = layout.slots();
        first = new int[slots.size()];
        counts = new boolean[slots.size()];
        slotShare = new double[slots.size()];
        share = new double[slots.size()];
        moving = new boolean[slots.size()];
        movingUntil = new long[slots.size()];
        values = new long[pit.signals().size()][VALUES];
        for (int slot = 0; slot < slots.size(); slot++) {
            Layout.Slot here = slots.get(slot);
            boolean same = slot > 0 && name(slot - 1).equals(name(slot));
            first[slot] = same ? first[slot - 1] : slot;
            // a panel that states one current for all of itself takes that whatever it shows
            counts[slot] = here.segment() == segment
                    && !here.panel().draws().active().isKnown()
                    && here.indicator().draws().active().isKnown();
        }
    }

    private List<String> name(int slot) {
        return List.of(
                slots.get(slot).panel().name(), slots.get(slot).indicator().name());
    }

    /** What changed since it was last fetched. */
    Changes changes() {
        return changes;
    }

    /** Notes the motions that have ended by now. */
    void reached(long untilNanos) {
        for (int slot = 0; slot < moving.length; slot++) {
            if (moving[slot] && movingUntil[slot] <= untilNanos) {
                stop(slot);
            }
        }
    }

    @Override
    public void follow(SegmentRun run) {
        // events say all that is needed
    }

    @Override
    public void stateChanged(long atNanos, int signal, int serial, long value) {
        values[signal][serial % VALUES] = value;
    }

    @Override
    public void shown(long atNanos, int slot, int serial) {
        Layout.Slot here = slots.get(slot);
        Kind kind = here.indicator().kind();
        if (!counts[slot] || kind.moves() || kind == Kind.FLAG) {
            return;
        }
        Signal signal = pit.signals().get(here.signal());
        slotShare[slot] = PartCurrent.share(here.indicator(), signal, values[here.signal()][serial % VALUES]);
        double most = 0;
        for (int other = first[slot]; other < first.length && first[other] == first[slot]; other++) {
            most = Math.max(most, slotShare[other]);
        }
        light(atNanos, first[slot], most);
    }

    @Override
    public void applied(long atNanos, int slot, int serial, long heardNanos) {
        Indicator indicator = slots.get(slot).indicator();
        if (counts[slot] && indicator.kind() == Kind.FLAG) {
            moved(atNanos, slot, 0, atNanos + indicator.delayNanos(), 0);
        }
    }

    @Override
    public void moved(long atNanos, int slot, long from, long untilNanos, long to) {
        if (!counts[slot]) {
            return;
        }
        if (moving[slot] && movingUntil[slot] < atNanos) {
            stop(slot);
        }
        movingUntil[slot] = untilNanos;
        if (!moving[slot] && untilNanos > atNanos) {
            moving[slot] = true;
            change(atNanos, slot, PartCurrent.microamps(draws(slot), 1) - PartCurrent.microamps(draws(slot), 0));
            start(atNanos, slot);
        }
    }

    @Override
    public void reset(long atNanos, int node, long readyNanos) {
        for (int slot = 0; slot < first.length; slot++) {
            if (slots.get(slot).node() == node && counts[slot]) {
                slotShare[slot] = 0;
                movingUntil[slot] = Math.min(movingUntil[slot], atNanos);
                if (moving[slot]) {
                    stop(slot);
                }
                light(atNanos, first[slot], 0);
            }
        }
    }

    private void light(long atNanos, int indicator, double to) {
        double from = share[indicator];
        if (to != from) {
            share[indicator] = to;
            change(
                    atNanos,
                    indicator,
                    PartCurrent.microamps(draws(indicator), to) - PartCurrent.microamps(draws(indicator), from));
            if (from == 0) {
                start(atNanos, indicator);
            }
        }
    }

    private void start(long atNanos, int slot) {
        long more = PartCurrent.startMicroamps(draws(slot));
        if (more > 0) {
            change(atNanos, slot, more);
            change(atNanos + draws(slot).startNanos(), slot, -more);
        }
    }

    private void stop(int slot) {
        moving[slot] = false;
        change(movingUntil[slot], slot, PartCurrent.microamps(draws(slot), 0) - PartCurrent.microamps(draws(slot), 1));
    }

    private void change(long atNanos, int slot, long microamps) {
        changes.add(atNanos, slots.get(slot).node(), draws(slot).throughBoard(), microamps);
    }

    private Draws draws(int slot) {
        return slots.get(slot).indicator().draws();
    }

    /** Changes of current in the order in which they were noted, which need not be that of time. */
    static final class Changes {
        private long[] nanos = new long[256];
        private long[] microamps = new long[256];
        private int[] where = new int[256];
        private int count;

        void add(long atNanos, int node, boolean throughBoard, long more) {
            if (count == nanos.length) {
                nanos = Arrays.copyOf(nanos, count * 2);
                microamps = Arrays.copyOf(microamps, count * 2);
                where = Arrays.copyOf(where, count * 2);
            }
            nanos[count] = atNanos;
            where[count] = node << 1 | (throughBoard ? 1 : 0);
            microamps[count++] = more;
        }

        int count() {
            return count;
        }

        long nanos(int index) {
            return nanos[index];
        }

        int node(int index) {
            return where[index] >> 1;
        }

        boolean throughBoard(int index) {
            return (where[index] & 1) == 1;
        }

        long microamps(int index) {
            return microamps[index];
        }

        /** Moves those that lie before an instant to another list. */
        void hand(long untilNanos, Changes to) {
            int kept = 0;
            for (int i = 0; i < count; i++) {
                if (nanos[i] < untilNanos) {
                    to.add(nanos[i], node(i), throughBoard(i), microamps[i]);
                } else {
                    nanos[kept] = nanos[i];
                    where[kept] = where[i];
                    microamps[kept++] = microamps[i];
                }
            }
            count = kept;
        }

        void clear() {
            count = 0;
        }
    }
}
