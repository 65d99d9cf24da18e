package dropline.bus.run;

import dropline.bus.chance.Draws;
import dropline.bus.control.Controls;
import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.indicator.Shows;
import dropline.bus.node.ModelledNode;
import dropline.bus.node.NodeBehaviour;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Node;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Transceiver;
import dropline.bus.trace.EventOrder;
import dropline.bus.trace.Rank;
import dropline.bus.wire.Frame;
import dropline.bus.wire.Reception;
import dropline.bus.wire.Uart;
import dropline.bus.wire.Wire;
import dropline.protocol.Destination;
import dropline.protocol.NodeStatus;
import dropline.protocol.Protocol;
import java.util.List;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;

/**
 * The nodes of a segment, by their position in the poll order: who hears, who is about to talk, what a reply reports.
 */
final class Stations implements Polling.Answers {
    private final NodeBehaviour[] nodes;
    private final Uart[] ears;
    private final boolean[] floats;
    private final boolean[] isAlone;
    private final boolean[] isWell;
    private final EventOrder events;
    private final Wire wire;
    private final Reception reception;
    private final boolean spoiltByGarbage;
    private final int[] nodeIndex;
    private final int[] positionOf;
    private final Controls controls;
    private final int[][] controlsOf;
    private final int[][] reported;
    private final boolean[][] showsSlot;
    private final int[] talking;
    private int talkers;

    /**
     * @param wires how the node in each position replies
     * @param boards those that are emulated; null for none
     */
    Stations(
            Segment segment,
            Layout layout,
            Wiring wiring,
            IntFunction<Destination> wires,
            long seed,
            List<Fault> faults,
            EventOrder events,
            Shows shows,
            Controls controls,
            Wire wire,
            Reception reception,
            @Nullable Boards boards) {
        this.controls = controls;
        this.events = events;
        this.wire = wire;
        this.reception = reception;
        spoiltByGarbage = segment.protocol().framing() == Protocol.Framing.AFTER_DELIMITER;
        nodeIndex = wiring.nodes();
        int count = nodeIndex.length;
        positionOf = new int[layout.nodes().size()];
        nodes = new NodeBehaviour[count];
        ears = new Uart[count];
        floats = new boolean[count];
        isAlone = new boolean[count];
        isWell = new boolean[count];
        controlsOf = new int[count][];
        reported = new int[count][];
        showsSlot = new boolean[count][];
        talking = new int[count];
        int[] broadcast = wiring.broadcasts() ? wiring.signalsOfAll() : null;
        for (int n = 0; n < count; n++) {
            int node = nodeIndex[n];
            positionOf[node] = n;
            controlsOf[n] = wiring.controlsOf(node);
            reported[n] = new int[controlsOf[n].length];
            int[] signals = broadcast == null ? wiring.signalsOf(node) : broadcast;
            int[][] slots = wiring.slotsOf(node, signals);
            showsSlot[n] = new boolean[slots.length];
            for (int s = 0; s < slots.length; s++) {
                showsSlot[n][s] = slots[s].length > 0;
            }
            nodes[n] = boards != null && boards.has(n)
                    ? boards.node(n, slots)
                    : new ModelledNode(
                            segment, layout, node, seed, faults, wires.apply(n), slots, events, shows, wire.traffic());
            Node described = layout.nodes().get(node).node();
            Transceiver transceiver = described.profile().transceiver();
            floats[n] = transceiver.receiver() == Transceiver.Receiver.FLOATING_WHILE_SENDING;
            ears[n] = new Uart(
                    node,
                    nodes[n].bitNanos(0),
                    transceiver.samplesPerBit(),
                    transceiver.receiver(),
                    Draws.stream(seed, Draws.nameHash(described.name()), Draws.Purpose.CONTENTION));
            isAlone[n] = true;
            isWell[n] = !floats[n] && faults.stream().noneMatch(fault -> strikes(fault, node));
        }
        for (Fault fault : faults) {
            if (fault.other() >= 0
                    && layout.nodes().get(fault.other()).segment()
                            == layout.nodes().get(fault.node()).segment()) {
                isAlone[positionOf[fault.other()]] = false;
            }
            if (fault.kind() == FaultKind.DUPLICATE_ADDRESS) {
                isAlone[positionOf[fault.node()]] = false;
            }
        }
    }

    /** Whether a fault may bear on what a node hears. */
    private static boolean strikes(Fault fault, int node) {
        return fault.node() < 0 || fault.node() == node || fault.other() == node;
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
        return nodes[position].status(reply);
    }

    /** The control values a reply reports: those of its node, as it last believed them. */
    int[] reportedValues(Frame reply) {
        int[] own = controlsOf[positionOf[reply.talker]];
        int[] values = new int[own.length];
        for (int i = 0; i < own.length; i++) {
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
        hush(talker);
        return reply;
    }

    @Override
    public void tell(long atNanos, int position) {
        int[] mine = controlsOf[position];
        for (int i = 0; i < mine.length; i++) {
            controls.tell(atNanos, mine[i], reported[position][i]);
        }
    }

    /** How many there are. */
    int count() {
        return nodes.length;
    }

    /** Whether a position has its driver on. */
    boolean isTalking(int position, long atNanos) {
        Frame frame = nodes[position].transmission();
        return atNanos >= frame.driverOnNanos && atNanos < frame.driverOffNanos;
    }

    /** Restarts a node. */
    void reset(int position, long atNanos, long readyNanos) {
        nodes[position].reset(atNanos, readyNanos);
        hush(position);
    }

    /** Blocks a node's loop or interrupts once. */
    void stall(int position, Indicator.Blocks what, long fromNanos, long untilNanos) {
        nodes[position].stall(what, fromNanos, untilNanos);
    }

    @Override
    public void tellStatus(int position, long atNanos) {
        nodes[position].tellStatus(atNanos);
    }

    /** Gives every node a broadcast; where nothing is wrong with node and frame, nothing has to be looked into. */
    void giveAll(Frame frame) {
        boolean whole = reception.isWhole(frame);
        for (int n = 0; n < nodes.length; n++) {
            if (whole && isWell[n] && reception.agrees(frame, ears[n])) {
                nodes[n].advanceTo(frame.heardNanos);
                nodes[n].hear(frame);
            } else {
                give(frame, n);
            }
        }
    }

    /** Gives a request to whoever takes it for its own: the node asked, unless something is wrong. */
    void giveRequest(Frame request) {
        int asked = positionOf[request.node];
        if (isAlone[asked]) {
            give(request, asked);
            return;
        }
        for (int n = 0; n < nodes.length; n++) {
            if (nodes[n].takes(request)) {
                give(request, n);
            }
        }
    }

    /** Gives a request to one node, if it takes it for its own. */
    void giveRequest(Frame request, int position) {
        if (nodes[position].takes(request)) {
            give(request, position);
        }
    }

    /** A frame has been heard that this node may have to hear. */
    void give(Frame frame, int position) {
        NodeBehaviour node = nodes[position];
        if (node.isSilent(frame.heardNanos)) {
            return;
        }
        if (!hears(frame, position)) {
            node.heardWrong();
            events.post(frame.heardNanos, Rank.RECEIVED_WRONG, nodeIndex[position], frame.talker, frame.transaction, 0);
            return;
        }
        boolean wasQuiet = node.quietUntil() == NodeBehaviour.QUIET;
        node.advanceTo(frame.heardNanos);
        node.hear(frame);
        if (wasQuiet && node.quietUntil() != NodeBehaviour.QUIET) {
            talking[talkers++] = position;
        }
    }

    private boolean hears(Frame frame, int position) {
        NodeBehaviour node = nodes[position];
        Uart ear = ears[position];
        ear.bitNanos(node.bitNanos(frame.heardNanos));
        boolean received = reception.received(frame, wire, ear);
        if (reception.phantoms() > 0) {
            events.post(frame.heardNanos, Rank.PHANTOM, nodeIndex[position], reception.phantoms(), 0, 0);
        }
        if (received && spoiltByGarbage && floats(position, frame)) {
            // What its floating output gave while it sent is not yet ended by a delimiter.
            events.post(frame.heardNanos, Rank.PHANTOM, nodeIndex[position], 1, 0, 0);
            return false;
        }
        return received && !node.misses(frame, wire.afterReplyOfAnother(frame, nodeIndex[position]));
    }

    private boolean floats(int position, Frame frame) {
        return (floats[position] || nodes[position].floats(frame.heardNanos))
                && nodes[position].transmission().number == frame.number - 1
                && frame.number > 1;
    }

    private void hush(int position) {
        int kept = 0;
        for (int i = 0; i < talkers; i++) {
            if (talking[i] != position) {
                talking[kept++] = talking[i];
            }
        }
        talkers = kept;
    }
}
