package dropline.bus.run;

import dropline.bus.control.Controls;
import dropline.bus.fault.Fault;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Signal;
import dropline.bus.trace.TraceSink;
import dropline.bus.wire.Frame;
import dropline.protocol.Bytes;
import dropline.protocol.Decoded;
import dropline.protocol.Heard;
import dropline.protocol.NodeEnd;
import dropline.protocol.NodeStatus;
import dropline.protocol.NodeWire;
import dropline.protocol.SignalPacking;
import java.util.ArrayList;
import java.util.List;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * What the nodes of a segment understand of the bytes on their pair: which frames those are, whom they are for, and
 * what values they carry.
 */
final class Understanding {
    /** A node's own end, or one under the address of another that it answers for. */
    private record End(int position, int asPosition, NodeEnd end) {}

    private final Pit pit;
    private final Segment segment;
    private final Wiring wiring;
    private final Supplier<Stations> stations;
    private final Told told;
    private final Asked[] asked;
    private final List<End> ends = new ArrayList<>();
    private final List<NodeWire> wires = new ArrayList<>();
    private final int[][] ownNumbers;
    private final int[][] ownSlots;
    private final int[] allNumbers;
    private final int[][] allSlots;
    private final int[][] signals;
    private final int[] serials;
    private final long[] values;
    private int transactions;
    private int broadcasts;

    Understanding(Setting setting, List<Fault> faults, Supplier<Stations> stations, LongSupplier now) {
        pit = setting.pit;
        segment = setting.segment;
        wiring = setting.wiring;
        this.stations = stations;
        Layout layout = setting.layout;
        Controls controls = setting.controls;
        int count = wiring.nodes().length;
        asked = new Asked[count];
        signals = new int[count][];
        ownNumbers = new int[count][];
        ownSlots = new int[count][];
        allSlots = new int[count][];
        allNumbers = wiring.wireOfAll().signals().stream()
                .mapToInt(NodeWire.SignalWire::number)
                .toArray();
        serials = new int[pit.signals().size()];
        values = new long[pit.signals().size()];
        int most = allNumbers.length;
        for (int n = 0; n < count; n++) {
            int node = wiring.nodes()[n];
            NodeWire own = wiring.wireOf(node);
            wires.add(own);
            int[] mine = wiring.signalsOf(node);
            signals[n] = wiring.broadcasts() ? wiring.signalsOfAll() : mine;
            ownNumbers[n] =
                    own.signals().stream().mapToInt(NodeWire.SignalWire::number).toArray();
            ownSlots[n] = slots(mine, signals[n]);
            allSlots[n] = slots(wiring.signalsOfAll(), signals[n]);
            int[] reported = wiring.controlsOf(node);
            int position = n;
            NodeEnd end = end(own);
            ends.add(new End(n, n, end));
            asked[n] = new Asked(end, () -> status(position), () -> believed(controls, reported, now.getAsLong()));
            most = Math.max(most, mine.length);
        }
        for (Fault fault : faults) {
            if (fault.other() >= 0 && layout.nodes().get(fault.node()).segment() == segmentOf(layout, fault.other())) {
                NodeWire mine = wiring.wireOf(fault.node());
                NodeWire under = new NodeWire(
                        wiring.wireOf(fault.other()).address(), mine.signals(), mine.controls(), mine.firmware());
                ends.add(new End(position(fault.node()), position(fault.other()), end(under)));
            }
        }
        told = new Told(segment, most);
    }

    private static int segmentOf(Layout layout, int node) {
        return layout.nodes().get(node).segment();
    }

    private NodeEnd end(NodeWire node) {
        return segment.protocol().nodeEnd(node, segment.baud(), segment.format());
    }

    /** For each signal of a destination, where it stands among a node's slots; -1 where it does not. */
    private static int[] slots(int[] from, int[] among) {
        int[] slots = new int[from.length];
        for (int i = 0; i < from.length; i++) {
            slots[i] = indexOf(among, from[i]);
        }
        return slots;
    }

    private static int indexOf(int[] among, int one) {
        for (int i = 0; i < among.length; i++) {
            if (among[i] == one) {
                return i;
            }
        }
        return -1;
    }

    private int position(int node) {
        return indexOf(wiring.nodes(), node);
    }

    private NodeStatus status(int position) {
        Stations all = stations.get();
        return all.status(position, all.frameOf(position));
    }

    private static int[] believed(Controls controls, int[] reported, long nowNanos) {
        int[] now = new int[reported.length];
        for (int i = 0; i < now.length; i++) {
            controls.believed(reported[i], nowNanos);
            now[i] = controls.value(reported[i]) & 0xFFFF;
        }
        return now;
    }

    /** The nodes as the protocol sees them, in poll order. */
    List<NodeWire> wires() {
        return wires;
    }

    /** How the node in a position replies. */
    Asked asked(int position) {
        return asked[position];
    }

    /** The value of a signal that was understood last, in units of its resolution; 0 if none was. */
    long value(int signal) {
        return values[signal];
    }

    /** When the last character was over, ns. */
    long endNanos() {
        return told.endNanos();
    }

    /** The bytes of the frame understood last, or null if it is another. */
    @Nullable
    Bytes bytesOf(Frame frame) {
        return told.isFrame(frame) ? told.bytes() : null;
    }

    /** A silence has grown so long. */
    void silence(int tenthsOfBit) {
        for (End end : ends) {
            understand(end, end.end().onSilence(tenthsOfBit));
        }
    }

    /**
     * Characters have been heard.
     *
     * @param tenthsBefore silence before them
     * @param talker who sent them: a node does not hear itself
     */
    void hear(Frame piece, Bytes bytes, int tenthsBefore, int talker) {
        if (tenthsBefore > 0) {
            silence(tenthsBefore);
        }
        for (int i = 0; i < bytes.length(); i++) {
            told.add(piece, i, bytes.at(i));
            for (End end : ends) {
                if (talker == TraceSink.CONTROLLER || wiring.nodes()[end.position()] != talker) {
                    understand(end, end.end().onByte(bytes.at(i)));
                }
            }
        }
    }

    private void understand(End end, Decoded<Heard> first) {
        Decoded<Heard> decoded = first;
        while (!(decoded instanceof Decoded.NeedMore<Heard>)) {
            if (decoded instanceof Decoded.Complete<Heard> complete) {
                give(end, complete.frame(), complete.bytesUsed());
            }
            decoded = end.end().more();
        }
    }

    /** A frame is known to one end: the first that knows it is for it, or all where it is for all. */
    private void give(End end, Heard said, int chars) {
        int address = wires.get(end.asPosition()).address();
        if (said.kind() == Heard.Kind.REQUEST && said.address() == address) {
            asked[end.position()].asked(end.end());
            giveRequest(end, said, chars);
        } else if (said.kind() == Heard.Kind.BROADCAST && end.position() == end.asPosition()) {
            giveBroadcast(end, said, chars);
        }
    }

    private void giveRequest(End end, Heard said, int chars) {
        Frame frame = told.frame(chars);
        frame.kind = TraceSink.REQUEST;
        frame.node = wiring.nodes()[end.asPosition()];
        frame.transaction = ++transactions;
        frame.lastBroadcast = broadcasts;
        pick(frame, said, signals[end.position()], ownNumbers[end.position()], ownSlots[end.position()]);
        stations.get().giveRequest(frame, end.position());
    }

    private void giveBroadcast(End end, Heard said, int chars) {
        if (end.position() == 0) {
            int numbered = said.sequence() == Heard.NONE ? 1 : said.sequence() - broadcasts & 0xFF;
            broadcasts = broadcasts == 0 && said.sequence() != Heard.NONE ? said.sequence() : broadcasts + numbered;
        }
        Frame frame = told.frame(chars);
        frame.kind = TraceSink.BROADCAST;
        frame.node = TraceSink.ALL;
        frame.transaction = broadcasts;
        frame.lastBroadcast = broadcasts;
        pick(frame, said, signals[end.position()], allNumbers, allSlots[end.position()]);
        stations.get().give(frame, end.position());
    }

    private void pick(Frame frame, Heard said, int[] mine, int[] numbers, int[] slots) {
        frame.count = 0;
        for (Heard.Value one : said.values()) {
            int index = indexOf(numbers, one.number());
            if (index < 0 || slots[index] < 0 || frame.count == frame.picked.length) {
                continue;
            }
            int signal = mine[slots[index]];
            long value = unpacked(signal, one.value());
            if (serials[signal] == 0 || values[signal] != value) {
                serials[signal]++;
                values[signal] = value;
            }
            frame.picked[frame.count] = slots[index];
            frame.serials[frame.count] = serials[signal];
            frame.values[frame.count] = value;
            frame.count++;
        }
        frame.noteSlots();
    }

    private long unpacked(int signal, long travelled) {
        Signal described = pit.signals().get(signal);
        return SignalPacking.unpack(travelled, described.valueBytes(), described.lowest());
    }
}
