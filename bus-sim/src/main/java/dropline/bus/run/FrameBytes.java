package dropline.bus.run;

import dropline.bus.chance.Draws;
import dropline.bus.pit.Segment;
import dropline.bus.trace.TraceSink;
import dropline.bus.wire.Frame;
import dropline.protocol.Bytes;
import dropline.protocol.Destination;
import dropline.protocol.NodeStatus;
import dropline.protocol.NodeWire;

/**
 * The bytes of a frame, made only when someone asks. Where a protocol knows lengths only, bytes are made up, the same
 * for the same frame.
 */
final class FrameBytes {
    private final Segment segment;
    private final Wiring wiring;
    private final StateQueues queues;
    private final Stations stations;

    FrameBytes(Segment segment, Wiring wiring, StateQueues queues, Stations stations) {
        this.segment = segment;
        this.wiring = wiring;
        this.queues = queues;
        this.stations = stations;
    }

    /** The bytes of a frame that has begun and not been followed by another of its talker. */
    Bytes of(Frame frame) {
        if (frame.kind == Frame.BABBLE || !segment.protocol().knowsBytes()) {
            return madeUp(frame);
        }
        if (frame.kind == TraceSink.BROADCAST) {
            Destination all = queues.everyone().wire();
            return all.encodeRequest(frame.transaction & 0xFF, frame.picked, frame.count, frame.values);
        }
        if (frame.kind == TraceSink.REQUEST) {
            Destination own = queues.own(stations.position(frame.node)).wire();
            return own.encodeRequest(sequence(frame) & 0xFF, frame.picked, frame.count, frame.values);
        }
        NodeStatus status = stations.status(stations.position(frame.talker), frame);
        Destination said = frame.talker == frame.node
                ? queues.own(stations.position(frame.talker)).wire()
                : underAnother(frame.talker, frame.node);
        return said.encodeReply(status, frame.picked, frame.count, stations.reportedValues(frame));
    }

    /** A poll says which broadcast was the last; where there are none it is counted itself. */
    private int sequence(Frame request) {
        return queues.all() == null ? request.transaction : request.lastBroadcast;
    }

    /** How a node replies that uses another's address. */
    private Destination underAnother(int talker, int node) {
        NodeWire own = wiring.wireOf(talker);
        return segment.protocol().node(new NodeWire(wiring.wireOf(node).address(), own.signals(), own.controls()));
    }

    /** Bytes that stand for those of a frame of which only the length is known. */
    static Bytes madeUp(Frame frame) {
        int[] bytes = new int[frame.chars];
        long stream = Draws.mix(frame.startNanos * 31 + frame.talker);
        for (int i = 0; i < bytes.length; i++) {
            bytes[i] = 1 + (int) (Draws.draw(stream, i) * 255);
        }
        return Bytes.of(bytes);
    }
}
