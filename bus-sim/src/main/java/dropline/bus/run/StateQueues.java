package dropline.bus.run;

import dropline.bus.controller.StateQueue;
import dropline.bus.pit.Segment;
import dropline.bus.trace.EventOrder;
import dropline.bus.trace.TraceSink;
import java.util.Arrays;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * All that waits to be sent on a segment: one queue for all nodes, or one for each. Sends everything again in turn,
 * spread evenly over the controller's refresh period.
 */
final class StateQueues {
    private static final long NEVER = Long.MAX_VALUE;

    private final EventOrder events;
    private final @Nullable StateQueue all;
    private final StateQueue[] own;
    private final StateQueue[] filled;
    private final int[][] queueOfSignal;
    private final int[][] slotOfSignal;
    private final long refreshEveryNanos;
    private long nextRefresh;
    private int refreshQueue;

    StateQueues(Segment segment, Wiring wiring, int signals, EventOrder events) {
        this.events = events;
        int[] nodes = wiring.nodes();
        own = new StateQueue[nodes.length];
        for (int n = 0; n < nodes.length; n++) {
            own[n] = new StateQueue(
                    nodes[n], segment.protocol().node(wiring.wireOf(nodes[n])), wiring.signalsOf(nodes[n]));
        }
        all = wiring.broadcasts()
                ? new StateQueue(TraceSink.ALL, segment.protocol().broadcast(wiring.wireOfAll()), wiring.signalsOfAll())
                : null;
        filled = all == null ? own : new StateQueue[] {all};
        queueOfSignal = new int[signals][0];
        slotOfSignal = new int[signals][0];
        int slots = 0;
        for (int q = 0; q < filled.length; q++) {
            slots += filled[q].slots();
            for (int s = 0; s < filled[q].slots(); s++) {
                int signal = filled[q].signal(s);
                queueOfSignal[signal] = append(queueOfSignal[signal], q);
                slotOfSignal[signal] = append(slotOfSignal[signal], s);
            }
        }
        refreshEveryNanos = slots == 0 ? 0 : segment.controller().refreshNanos() / slots;
        nextRefresh = refreshEveryNanos == 0 ? NEVER : refreshEveryNanos;
    }

    /** The queue for all nodes, or null where state is addressed. */
    @Nullable
    StateQueue all() {
        return all;
    }

    /** The queue for all nodes, where there is one. */
    StateQueue everyone() {
        return Objects.requireNonNull(all);
    }

    /** How the node polled in this position is talked to, and what waits for it where state is addressed. */
    StateQueue own(int position) {
        return own[position];
    }

    /** The most values one frame may carry. */
    int mostSlots() {
        int most = all == null ? 0 : all.slots();
        for (StateQueue queue : own) {
            most = Math.max(most, queue.slots());
        }
        return most;
    }

    /** The controller has a change: it waits wherever it has to go. */
    void arrive(long atNanos, int signal, int serial, long value) {
        int[] to = queueOfSignal[signal];
        for (int i = 0; i < to.length; i++) {
            filled[to[i]].offer(slotOfSignal[signal][i], serial, value, atNanos, events);
        }
    }

    /** When the next value is due to be sent again. */
    long nextRefreshNanos() {
        return nextRefresh;
    }

    /** Marks the value that is due for being sent again. */
    void refresh() {
        nextRefresh += refreshEveryNanos;
        while (filled[refreshQueue].slots() == 0) {
            refreshQueue = (refreshQueue + 1) % filled.length;
        }
        if (filled[refreshQueue].refreshNext()) {
            refreshQueue = (refreshQueue + 1) % filled.length;
        }
    }

    private static int[] append(int[] array, int value) {
        int[] longer = Arrays.copyOf(array, array.length + 1);
        longer[array.length] = value;
        return longer;
    }
}
