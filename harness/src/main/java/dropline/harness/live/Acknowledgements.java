package dropline.harness.live;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.trace.TraceSink;
import dropline.harness.measure.Times;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;

/**
 * How long after a change of state each board has said that its program has it: its replies return the number of the
 * last state frame applied. What a panel shows came no later to its program than that: an upper bound that was
 * observed, where the protocol acknowledges state that is sent to all.
 */
public final class Acknowledgements implements TraceSink {
    private static final int MODULUS = 0xFF;
    private static final long NONE = -1;

    /** In place of a frame: the one that carried it was missed, and another must. */
    private static final int MISSED = Integer.MAX_VALUE;

    /** A reply, until the trace has come to its instant. */
    private record Reply(long atNanos, int node, int sequence) {}

    /** One signal on its way to one node. */
    private static final class Way {
        private final int node;
        private long oldestNanos = NONE;
        private long oldestUncarriedNanos = NONE;
        private int carriedBy = MISSED;

        Way(int node) {
            this.node = node;
        }
    }

    private final List<List<Way>> ways = new ArrayList<>();
    private final List<Times> times = new ArrayList<>();
    private final ArrayDeque<Reply> replies = new ArrayDeque<>();
    private int broadcasts;
    private final int[] atRequest;

    /** @param pit of one segment */
    public Acknowledgements(Pit pit) {
        Layout layout = Layout.of(pit);
        for (int signal = 0; signal < pit.signals().size(); signal++) {
            List<Way> own = new ArrayList<>();
            for (Layout.Slot slot : layout.slots()) {
                if (slot.signal() == signal && own.stream().noneMatch(way -> way.node == slot.node())) {
                    own.add(new Way(slot.node()));
                }
            }
            ways.add(own);
        }
        layout.nodes().forEach(node -> times.add(new Times()));
        atRequest = new int[times.size()];
    }

    /** A node's reply says which state frame it applied last. */
    void replied(long atNanos, int node, int sequence) {
        replies.add(new Reply(atNanos, node, sequence));
    }

    /** From a change to the reply that acknowledges it, of each node in the order of the layout. */
    public List<Times> times() {
        return List.copyOf(times);
    }

    @Override
    public void stateChanged(long atNanos, int signal, int serial, long value) {
        settle(atNanos);
        for (Way way : ways.get(signal)) {
            way.oldestUncarriedNanos = way.oldestUncarriedNanos == NONE ? atNanos : way.oldestUncarriedNanos;
        }
    }

    @Override
    public void carried(long atNanos, int destination, int signal, int serial, int transaction) {
        settle(atNanos);
        if (destination != ALL) {
            return;
        }
        for (Way way : ways.get(signal)) {
            if (way.oldestNanos == NONE) {
                way.oldestNanos = way.oldestUncarriedNanos;
            }
            way.oldestUncarriedNanos = NONE;
            way.carriedBy = transaction;
        }
    }

    @Override
    public void frameStarted(long atNanos, int talker, int frame, int node, int transaction, int chars) {
        settle(atNanos);
        if (frame == REQUEST) {
            atRequest[node] = broadcasts;
        } else if (frame == BROADCAST) {
            broadcasts = transaction;
        }
    }

    @Override
    public void answered(long atNanos, int node, int transaction, int attempt, long gapNanos) {
        settle(atNanos + 1);
    }

    @Override
    public void ended(long atNanos) {
        settle(Long.MAX_VALUE);
    }

    private void settle(long nowNanos) {
        while (!replies.isEmpty() && replies.getFirst().atNanos() < nowNanos) {
            Reply reply = replies.removeFirst();
            int asked = atRequest[reply.node()];
            int applied = asked - (asked - reply.sequence() & MODULUS);
            ways.forEach(own -> own.stream()
                    .filter(way -> way.node == reply.node() && way.oldestNanos != NONE && way.carriedBy <= asked)
                    .forEach(way -> acknowledge(way, applied, reply.atNanos())));
        }
    }

    private void acknowledge(Way way, int applied, long atNanos) {
        if (way.carriedBy > applied) {
            way.carriedBy = MISSED;
        } else {
            times.get(way.node).add(Math.max(0, atNanos - way.oldestNanos));
            way.oldestNanos = NONE;
        }
    }
}
