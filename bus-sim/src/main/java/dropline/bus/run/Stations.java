package dropline.bus.run;

import dropline.bus.control.Controls;
import dropline.bus.indicator.Shows;
import dropline.bus.node.ModelledNode;
import dropline.bus.node.NodeBehaviour;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Segment;
import dropline.bus.trace.EventOrder;
import dropline.bus.wire.Frame;
import dropline.bus.wire.Wire;
import dropline.protocol.NodeStatus;

/**
 * The nodes of a segment, by their position in the poll order: who hears, who is about to talk, what a reply reports.
 */
final class Stations {
    private final NodeBehaviour[] nodes;
    private final boolean[] dead;
    private final int[] nodeIndex;
    private final int[] positionOf;
    private final Controls controls;
    private final int[][] controlsOf;
    private final int[][] reported;
    private final boolean[][] showsSlot;
    private final int[] talking;
    private int talkers;

    Stations(
            Segment segment,
            Layout layout,
            Wiring wiring,
            StateQueues queues,
            long seed,
            int deadNode,
            EventOrder events,
            Shows shows,
            Controls controls,
            Wire wire) {
        this.controls = controls;
        nodeIndex = wiring.nodes();
        int count = nodeIndex.length;
        positionOf = new int[layout.nodes().size()];
        nodes = new NodeBehaviour[count];
        dead = new boolean[count];
        controlsOf = new int[count][];
        reported = new int[count][];
        showsSlot = new boolean[count][];
        talking = new int[count];
        for (int n = 0; n < count; n++) {
            int node = nodeIndex[n];
            positionOf[node] = n;
            dead[n] = node == deadNode;
            controlsOf[n] = wiring.controlsOf(node);
            reported[n] = new int[controlsOf[n].length];
            int[] signals = wiring.broadcasts() ? wiring.signalsOfAll() : wiring.signalsOf(node);
            int[][] slots = wiring.slotsOf(node, signals);
            showsSlot[n] = new boolean[slots.length];
            for (int s = 0; s < slots.length; s++) {
                showsSlot[n][s] = slots[s].length > 0;
            }
            nodes[n] = new ModelledNode(
                    segment, layout, node, seed, queues.own(n).wire(), slots, events, shows, wire.traffic());
        }
    }

    /** The frame a position last sent. */
    Frame frameOf(int position) {
        return nodes[position].transmission();
    }

    /** A position's number in the trace. */
    int node(int position) {
        return nodeIndex[position];
    }

    /** Where a node of the trace stands in the poll order. */
    int position(int node) {
        return positionOf[node];
    }

    /** What a node says of itself in a reply. */
    NodeStatus status(int position, Frame reply) {
        return new NodeStatus(reply.lastBroadcast & 0xFF, 0, 0, 0, 0);
    }

    /** The control values a reply reports: those of its node, as it last believed them. */
    int[] reportedValues(Frame reply) {
        int[] asked = controlsOf[positionOf[reply.node]];
        int[] own = controlsOf[positionOf[reply.talker]];
        int[] values = new int[asked.length];
        for (int i = 0; i < Math.min(asked.length, own.length); i++) {
            values[i] = controls.value(own[i]) & 0xFFFF;
        }
        return values;
    }

    /** For each slot of a broadcast, whether this node shows it. */
    boolean[] shows(int position) {
        return showsSlot[position];
    }

    /** The position that talks next unless it hears something first, or -1. */
    int nextTalker() {
        int next = -1;
        for (int i = 0; i < talkers; i++) {
            if (next < 0 || nodes[talking[i]].quietUntil() < nodes[next].quietUntil()) {
                next = talking[i];
            }
        }
        return next;
    }

    /** When that position enables its driver. */
    long quietUntil(int position) {
        return nodes[position].quietUntil();
    }

    /** Lets a node talk; its reply reports its controls as it believes them at this instant. */
    Frame talk(int talker) {
        Frame reply = nodes[talker].transmit();
        int[] mine = controlsOf[talker];
        for (int i = 0; i < mine.length; i++) {
            reported[talker][i] = controls.believed(mine[i], reply.driverOnNanos);
        }
        int kept = 0;
        for (int i = 0; i < talkers; i++) {
            if (talking[i] != talker) {
                talking[kept++] = talking[i];
            }
        }
        talkers = kept;
        return reply;
    }

    /** Tells the host what this node's last reply reported. */
    void tell(long atNanos, int position) {
        int[] mine = controlsOf[position];
        for (int i = 0; i < mine.length; i++) {
            controls.tell(atNanos, mine[i], reported[position][i]);
        }
    }

    /** Gives every node a broadcast. */
    void giveAll(Frame frame) {
        for (int n = 0; n < nodes.length; n++) {
            give(frame, n);
        }
    }

    /** Gives a node a frame, if it is plugged in and the frame arrived undisturbed. */
    void give(Frame frame, int position) {
        if (dead[position] || frame.clashed) {
            return;
        }
        NodeBehaviour node = nodes[position];
        boolean wasQuiet = node.quietUntil() == NodeBehaviour.QUIET;
        node.advanceTo(frame.heardNanos);
        node.hear(frame);
        if (wasQuiet && node.quietUntil() != NodeBehaviour.QUIET) {
            talking[talkers++] = position;
        }
    }
}
