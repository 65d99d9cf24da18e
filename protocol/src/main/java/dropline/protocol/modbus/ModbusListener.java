package dropline.protocol.modbus;

import dropline.protocol.CharacterFormat;
import dropline.protocol.Decoded;
import dropline.protocol.Heard;
import dropline.protocol.Listener;
import dropline.protocol.NodeWire;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Hears both sides of a Modbus segment. Requests and responses look alike, so a frame that can be the response to what
 * was asked last is taken for it, and any other that can be a request for one.
 */
final class ModbusListener implements Listener {
    private static final Decoded<Heard> NEED_MORE = new Decoded.NeedMore<>();

    private final ModbusDecoder requests;
    private final ModbusDecoder responses;
    private final Map<Integer, RegisterMap> nodes = new TreeMap<>();
    private final List<NodeWire> all;
    private ModbusFrame.@Nullable Request asked;

    ModbusListener(List<NodeWire> nodes, int baud, CharacterFormat format) {
        requests = new ModbusDecoder(ModbusDecoder.Role.REQUESTS, baud, format);
        responses = new ModbusDecoder(ModbusDecoder.Role.RESPONSES, baud, format);
        nodes.forEach(node -> this.nodes.put(node.address(), new RegisterMap(node)));
        all = List.copyOf(nodes);
    }

    /** Frames end by silence, never with a byte. */
    @Override
    public Decoded<Heard> onByte(int next) {
        requests.onByte(next);
        responses.onByte(next);
        return NEED_MORE;
    }

    @Override
    public Decoded<Heard> onSilence(int tenthsOfBit) {
        Decoded<ModbusFrame> request = requests.onSilence(tenthsOfBit);
        Decoded<ModbusFrame> response = responses.onSilence(tenthsOfBit);
        if (response instanceof Decoded.Complete<ModbusFrame> complete
                && complete.frame() instanceof ModbusFrame.Response answer
                && (answers(answer) || !(request instanceof Decoded.Complete<ModbusFrame>))) {
            Heard heard = said(answer);
            asked = null;
            return new Decoded.Complete<>(heard, complete.bytesUsed());
        }
        if (request instanceof Decoded.Complete<ModbusFrame> complete) {
            asked = complete.frame() instanceof ModbusFrame.Request known ? known : null;
            return new Decoded.Complete<>(asked(complete.frame()), complete.bytesUsed());
        }
        return request instanceof Decoded.Rejected<ModbusFrame> rejected
                ? new Decoded.Rejected<>(rejected.reason(), rejected.bytesDropped())
                : NEED_MORE;
    }

    @Override
    public Decoded<Heard> more() {
        return NEED_MORE;
    }

    /** Whether a response can be the one to what was asked last. */
    private boolean answers(ModbusFrame.Response answer) {
        ModbusFrame.Request request = asked;
        if (request == null
                || request.address() != answer.address()
                || request.request().function() != answer.response().function()) {
            return false;
        }
        return answer.response() instanceof ModbusResponse.Refusal
                || answer.encode().length() == request.request().responseLength();
    }

    private Heard said(ModbusFrame.Response answer) {
        RegisterMap map = nodes.get(answer.address());
        int start = start(asked);
        List<Heard.Value> controls =
                map != null && start >= 0 && answer.response() instanceof ModbusResponse.Registers read
                        ? map.controls(start, read.values())
                        : List.of();
        return new Heard(Heard.Kind.REPLY, answer.address(), Heard.NONE, List.of(), controls, null);
    }

    private static int start(ModbusFrame.@Nullable Request asked) {
        if (asked == null) {
            return -1;
        }
        if (asked.request() instanceof ModbusRequest.ReadRegisters read) {
            return read.start();
        }
        return asked.request() instanceof ModbusRequest.ExchangeRegisters exchange ? exchange.readStart() : -1;
    }

    private Heard asked(ModbusFrame frame) {
        List<Heard.Value> values = frame instanceof ModbusFrame.Request request
                ? written(request.address(), request.request())
                : List.of();
        return new Heard(
                frame.address() == 0 ? Heard.Kind.BROADCAST : Heard.Kind.REQUEST,
                frame.address(),
                Heard.NONE,
                values,
                List.of(),
                null);
    }

    private List<Heard.Value> written(int address, ModbusRequest request) {
        if (address != 0) {
            RegisterMap map = nodes.get(address);
            return map == null ? List.of() : written(map, request);
        }
        return all.stream()
                .flatMap(node -> written(new RegisterMap(node), request).stream())
                .distinct()
                .toList();
    }

    /** The signals that a request writes. */
    static List<Heard.Value> written(RegisterMap map, ModbusRequest request) {
        if (request instanceof ModbusRequest.WriteRegister one) {
            return map.signals(one.start(), List.of(one.value()));
        }
        if (request instanceof ModbusRequest.WriteRegisters many) {
            return map.signals(many.start(), many.values());
        }
        return request instanceof ModbusRequest.ExchangeRegisters exchange
                ? map.signals(exchange.writeStart(), exchange.values())
                : List.of();
    }
}
