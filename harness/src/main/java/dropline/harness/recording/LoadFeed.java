package dropline.harness.recording;

import dropline.bus.host.StateBlock;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Signal;
import java.util.ArrayList;
import java.util.List;

/**
 * A pit's described load as a feed without end: a state at every period, the first at one period, and in each the next
 * signals in turn. The turn goes round the nodes, each giving its next signal in the pit's order; a signal shown on
 * several nodes belongs to the first, one shown nowhere takes no part. A signal that changes goes to and fro between
 * its least value and the one above, so a lamp flips.
 */
public final class LoadFeed implements StateFeed {
    private final long periodNanos;
    private final int changesPerState;
    private final int[] turn;
    private final long[] low;
    private final boolean[] raised;
    private int next;
    private long states;

    public LoadFeed(Pit pit, Pit.Load load) {
        this.periodNanos = load.periodNanos();
        this.turn = turn(pit);
        this.changesPerState = Math.min(load.changesPerState(), turn.length);
        this.low = new long[pit.signals().size()];
        this.raised = new boolean[low.length];
        for (int i = 0; i < low.length; i++) {
            Signal signal = pit.signals().get(i);
            low[i] = Math.round(signal.min() / signal.resolution());
        }
    }

    @Override
    public boolean fill(StateBlock block, long untilNanos) {
        block.clear();
        while ((states + 1) * periodNanos < untilNanos) {
            states++;
            block.addRow(states * periodNanos);
            for (int i = 0; i < changesPerState; i++) {
                int signal = turn[next];
                next = next + 1 == turn.length ? 0 : next + 1;
                raised[signal] = !raised[signal];
                block.addChange(signal, low[signal] + (raised[signal] ? 1 : 0));
            }
        }
        return true;
    }

    @Override
    public void close() {
        // Nothing is held open.
    }

    private static int[] turn(Pit pit) {
        Layout layout = Layout.of(pit);
        List<List<Integer>> byNode = new ArrayList<>();
        for (int node = 0; node < layout.nodes().size(); node++) {
            byNode.add(new ArrayList<>());
        }
        for (int signal = 0; signal < pit.signals().size(); signal++) {
            for (Layout.Slot slot : layout.slots()) {
                if (slot.signal() == signal) {
                    byNode.get(slot.node()).add(signal);
                    break;
                }
            }
        }
        List<Integer> order = new ArrayList<>();
        int longest = byNode.stream().mapToInt(List::size).max().orElse(0);
        for (int round = 0; round < longest; round++) {
            for (List<Integer> signals : byNode) {
                if (round < signals.size()) {
                    order.add(signals.get(round));
                }
            }
        }
        return order.stream().mapToInt(Integer::intValue).toArray();
    }
}
