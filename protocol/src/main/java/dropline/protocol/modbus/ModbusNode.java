package dropline.protocol.modbus;

import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import dropline.protocol.Decoded;
import dropline.protocol.Heard;
import dropline.protocol.NodeEnd;
import dropline.protocol.NodeStatus;
import dropline.protocol.NodeWire;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * A node's end of a Modbus segment, whoever the master is (MODBUS application protocol V1.1b3, sections 6 and 7).
 *
 * <p>Holding registers (functions 3, 6, 16, 23) and input registers (function 4) are the same: those of its signals
 * hold what was written last, 0 at first; those of its controls, and the gaps between them, can only be read. It has no
 * coils and no discrete inputs. What it does not have is refused with exception 2, a function it does not know with 1.
 */
final class ModbusNode implements NodeEnd {
    private static final Decoded<Heard> NEED_MORE = new Decoded.NeedMore<>();
    private static final int ILLEGAL_ADDRESS = 2;

    private final NodeWire node;
    private final RegisterMap map;
    private final ModbusDecoder decoder;
    private final Map<Integer, Integer> written = new TreeMap<>();
    private @Nullable ModbusFrame asked;

    ModbusNode(NodeWire node, int baud, CharacterFormat format) {
        this.node = node;
        map = new RegisterMap(node);
        decoder = new ModbusDecoder(ModbusDecoder.Role.REQUESTS, baud, format);
    }

    /** Frames end by silence, never with a byte. */
    @Override
    public Decoded<Heard> onByte(int next) {
        decoder.onByte(next);
        return NEED_MORE;
    }

    @Override
    public Decoded<Heard> onSilence(int tenthsOfBit) {
        Decoded<ModbusFrame> decoded = decoder.onSilence(tenthsOfBit);
        if (decoded instanceof Decoded.Complete<ModbusFrame> complete) {
            return new Decoded.Complete<>(heard(complete.frame()), complete.bytesUsed());
        }
        return decoded instanceof Decoded.Rejected<ModbusFrame> rejected
                ? new Decoded.Rejected<>(rejected.reason(), rejected.bytesDropped())
                : NEED_MORE;
    }

    @Override
    public Decoded<Heard> more() {
        return NEED_MORE;
    }

    private Heard heard(ModbusFrame frame) {
        boolean isOwn = frame.address() == node.address();
        List<Heard.Value> values = List.of();
        if (isOwn) {
            asked = frame;
        }
        // state for all is a run of registers of which a node takes its own
        if (frame instanceof ModbusFrame.Request request
                && (frame.address() == 0 || (isOwn && refusal(request.request()) == 0))) {
            values = ModbusListener.written(map, request.request());
            write(request.request());
        }
        Heard.Kind kind = frame.address() == 0 ? Heard.Kind.BROADCAST : Heard.Kind.REQUEST;
        return new Heard(kind, frame.address(), Heard.NONE, values, List.of(), null);
    }

    private void write(ModbusRequest request) {
        if (request instanceof ModbusRequest.WriteRegister one) {
            written.put(one.start(), one.value());
        } else if (request instanceof ModbusRequest.WriteRegisters many) {
            write(many.start(), many.values());
        } else if (request instanceof ModbusRequest.ExchangeRegisters exchange) {
            write(exchange.writeStart(), exchange.values());
        }
    }

    private void write(int start, List<Integer> values) {
        for (int i = 0; i < values.size(); i++) {
            written.put(start + i, values.get(i));
        }
    }

    @Override
    public Bytes reply(NodeStatus status, int[] controlValues) {
        ModbusFrame frame = asked;
        if (frame instanceof ModbusFrame.Unacceptable unacceptable) {
            return unacceptable.answer().encode();
        }
        if (!(frame instanceof ModbusFrame.Request request)) {
            throw new IllegalStateException("a node must be asked before it replies: address=" + node.address());
        }
        int refusal = refusal(request.request());
        ModbusResponse response = refusal == 0
                ? answer(request.request(), controlValues)
                : new ModbusResponse.Refusal(request.request().function(), refusal);
        return new ModbusFrame.Response(node.address(), response).encode();
    }

    /** The exception code for a request that reads or writes what is not there, or 0. */
    private int refusal(ModbusRequest request) {
        boolean may = true;
        if (request instanceof ModbusRequest.ReadRegisters read) {
            may = areThere(read.start(), read.quantity());
        } else if (request instanceof ModbusRequest.WriteRegister one) {
            may = map.isSignal(one.start());
        } else if (request instanceof ModbusRequest.WriteRegisters many) {
            may = areSignals(many.start(), many.values().size());
        } else if (request instanceof ModbusRequest.ExchangeRegisters exchange) {
            may = areThere(exchange.readStart(), exchange.readQuantity())
                    && areSignals(exchange.writeStart(), exchange.values().size());
        } else {
            may = false;
        }
        return may ? 0 : ILLEGAL_ADDRESS;
    }

    private boolean areThere(int start, int quantity) {
        for (int i = 0; i < quantity; i++) {
            if (!map.isThere(start + i)) {
                return false;
            }
        }
        return true;
    }

    private boolean areSignals(int start, int quantity) {
        for (int i = 0; i < quantity; i++) {
            if (!map.isSignal(start + i)) {
                return false;
            }
        }
        return true;
    }

    private ModbusResponse answer(ModbusRequest request, int[] controlValues) {
        if (request instanceof ModbusRequest.ReadRegisters read) {
            return new ModbusResponse.Registers(read.function(), read(read.start(), read.quantity(), controlValues));
        }
        if (request instanceof ModbusRequest.ExchangeRegisters exchange) {
            return new ModbusResponse.Registers(23, read(exchange.readStart(), exchange.readQuantity(), controlValues));
        }
        if (request instanceof ModbusRequest.WriteRegister one) {
            return new ModbusResponse.RegisterWritten(one.start(), one.value());
        }
        if (request instanceof ModbusRequest.WriteRegisters many) {
            return new ModbusResponse.RangeWritten(
                    16, many.start(), many.values().size());
        }
        throw new AssertionError(request);
    }

    private List<Integer> read(int start, int quantity, int[] controlValues) {
        List<Integer> read = new ArrayList<>(Collections.nCopies(quantity, 0));
        for (int i = 0; i < quantity; i++) {
            int control = map.control(start + i);
            read.set(i, control >= 0 ? controlValues[control] & 0xFFFF : written.getOrDefault(start + i, 0));
        }
        return read;
    }
}
