package dropline.protocol.custom;

import dropline.protocol.Decoded;
import dropline.protocol.Heard;
import dropline.protocol.Listener;
import dropline.protocol.NodeWire;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Hears a builder's own frames. Where a frame names no numbers, a value's place says which it is; where a reply names
 * no address, it is of the node that was asked last.
 */
final class CustomListener implements Listener {
    private static final Decoded<Heard> NEED_MORE = new Decoded.NeedMore<>();

    private final CustomDecoder decoder;
    private final Map<Integer, NodeWire> nodes = new TreeMap<>();
    private final List<Integer> all;
    private int asked;

    CustomListener(CustomDecoder decoder, List<NodeWire> nodes) {
        this.decoder = decoder;
        TreeSet<Integer> numbers = new TreeSet<>();
        for (NodeWire node : nodes) {
            this.nodes.put(node.address(), node);
            node.signals().forEach(signal -> numbers.add(signal.number()));
        }
        all = List.copyOf(numbers);
    }

    @Override
    public Decoded<Heard> onByte(int next) {
        return said(decoder.onByte(next));
    }

    @Override
    public Decoded<Heard> onSilence(int tenthsOfBit) {
        return said(decoder.onSilence(tenthsOfBit));
    }

    @Override
    public Decoded<Heard> more() {
        return said(decoder.more());
    }

    private Decoded<Heard> said(Decoded<CustomFrame> decoded) {
        if (decoded instanceof Decoded.Complete<CustomFrame> complete) {
            return new Decoded.Complete<>(said(complete.frame()), complete.bytesUsed());
        }
        return decoded instanceof Decoded.Rejected<CustomFrame> rejected
                ? new Decoded.Rejected<>(rejected.reason(), rejected.bytesDropped())
                : NEED_MORE;
    }

    private Heard said(CustomFrame frame) {
        int counter = frame.counter() == CustomFrame.NONE ? Heard.NONE : frame.counter();
        return switch (frame.kind()) {
            case STATE -> new Heard(Heard.Kind.BROADCAST, 0, counter, values(frame, all), List.of(), null);
            case REQUEST, REQUEST_WITH_STATE -> {
                asked = Math.max(0, frame.address());
                yield new Heard(Heard.Kind.REQUEST, asked, counter, values(frame, signals(asked)), List.of(), null);
            }
            case REPLY -> {
                int address = frame.address() == CustomFrame.NONE ? asked : frame.address();
                yield new Heard(Heard.Kind.REPLY, address, counter, List.of(), values(frame, controls(address)), null);
            }
        };
    }

    private List<Integer> signals(int address) {
        NodeWire node = nodes.get(address);
        return node == null
                ? List.of()
                : node.signals().stream().map(NodeWire.SignalWire::number).toList();
    }

    private List<Integer> controls(int address) {
        NodeWire node = nodes.get(address);
        return node == null
                ? List.of()
                : node.controls().stream().map(NodeWire.ControlWire::number).toList();
    }

    private static List<Heard.Value> values(CustomFrame frame, List<Integer> byPlace) {
        List<Heard.Value> values = new ArrayList<>();
        for (int i = 0; i < frame.items().size(); i++) {
            CustomFrame.Item item = frame.items().get(i);
            if (item.number() != CustomFrame.NONE) {
                values.add(new Heard.Value(item.number(), item.value()));
            } else if (i < byPlace.size()) {
                values.add(new Heard.Value(byPlace.get(i), item.value()));
            }
        }
        return values;
    }
}
