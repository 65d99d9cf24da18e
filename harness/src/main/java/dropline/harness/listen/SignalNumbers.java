package dropline.harness.listen;

import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Signal;
import dropline.bus.plan.SegmentWire;
import dropline.protocol.Heard;
import dropline.protocol.SignalPacking;
import java.util.HashMap;
import java.util.Map;

/** Which signal of the pit a number in a frame is, and which of its values the low bits are. */
final class SignalNumbers {
    private final Pit pit;
    private final Map<Integer, Integer> toAll = new HashMap<>();
    private final Map<Integer, Map<Integer, Integer>> toNode = new HashMap<>();

    SignalNumbers(Pit pit, Segment segment) {
        this.pit = pit;
        for (int signal : SegmentWire.signals(pit, segment)) {
            toAll.putIfAbsent(pit.signals().get(signal).number(), signal);
        }
        for (Node node : segment.nodes()) {
            Map<Integer, Integer> own = toNode.computeIfAbsent(node.address(), address -> new HashMap<>());
            for (int signal : SegmentWire.signals(pit, node)) {
                own.putIfAbsent(SegmentWire.number(pit, node, signal), signal);
            }
        }
    }

    /** Index of the signal; -1 where the pit has none of this number there. */
    int signal(Heard frame, int number) {
        Map<Integer, Integer> known =
                frame.kind() == Heard.Kind.BROADCAST ? toAll : toNode.getOrDefault(frame.address(), Map.of());
        return known.getOrDefault(number, -1);
    }

    /** The value, in units of the signal's resolution. */
    long value(int signal, Heard.Value value) {
        Signal described = pit.signals().get(signal);
        return SignalPacking.unpack(value.value(), described.valueBytes(), described.lowest());
    }
}
