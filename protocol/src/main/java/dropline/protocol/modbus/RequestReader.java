package dropline.protocol.modbus;

import dropline.protocol.Bytes;
import dropline.protocol.Decoded;
import dropline.protocol.Decoded.Reason;
import dropline.protocol.SignalPacking;
import java.util.ArrayList;
import java.util.List;

/**
 * Reads a frame whose check is right as a request. What is wrong with it gets the exception code that the application
 * protocol prescribes: 1 for the function, 3 for a quantity, a value or a length, 2 for a range beyond the last
 * address, looked at in this order.
 */
final class RequestReader {
    private static final int ILLEGAL_FUNCTION = 1;
    private static final int ILLEGAL_ADDRESS = 2;
    private static final int ILLEGAL_VALUE = 3;

    private final byte[] frame;
    private final int length;

    /** @param length of the whole frame, 4..256 */
    RequestReader(byte[] frame, int length) {
        this.frame = frame;
        this.length = length;
    }

    Decoded<ModbusFrame> read() {
        int address = octet(0);
        int function = octet(1);
        if (address > ModbusFrame.HIGHEST_ADDRESS) {
            return new Decoded.Rejected<>(Reason.BAD_ADDRESS, length);
        }
        if (function == 0 || function > 127) {
            return new Decoded.Rejected<>(Reason.BAD_KIND, length);
        }
        int exception = exception(function);
        if (exception != 0) {
            return address == 0
                    ? new Decoded.Rejected<>(Reason.BAD_VALUE, length)
                    : new Decoded.Complete<>(new ModbusFrame.Unacceptable(address, function, exception), length);
        }
        ModbusRequest request = request(function);
        return address == 0 && !request.mayBroadcast()
                ? new Decoded.Rejected<>(Reason.BAD_ADDRESS, length)
                : new Decoded.Complete<>(new ModbusFrame.Request(address, request), length);
    }

    private int exception(int function) {
        return switch (function) {
            case 1, 2 -> range(length == 8, ModbusRequest.MOST_BITS_READ);
            case 3, 4 -> range(length == 8, ModbusRequest.MOST_REGISTERS_READ);
            case 5 -> length == 8 && (word(4) == 0 || word(4) == 0xFF00) ? 0 : ILLEGAL_VALUE;
            case 6 -> length == 8 ? 0 : ILLEGAL_VALUE;
            case 15 -> range(holds(6, (quantity(4) + 7) / 8), ModbusRequest.MOST_BITS_WRITTEN);
            case 16 -> range(holds(6, 2 * quantity(4)), ModbusRequest.MOST_REGISTERS_WRITTEN);
            case 23 -> exchange();
            default -> ILLEGAL_FUNCTION;
        };
    }

    private int exchange() {
        boolean whole = holds(10, 2 * quantity(8));
        int read = range(whole, ModbusRequest.MOST_REGISTERS_READ);
        return read != 0 ? read : range(2 + 4, true, ModbusRequest.MOST_REGISTERS_EXCHANGED);
    }

    private int range(boolean whole, int most) {
        return range(2, whole, most);
    }

    private int range(int startAt, boolean whole, int most) {
        if (!whole || quantity(startAt + 2) < 1 || quantity(startAt + 2) > most) {
            return ILLEGAL_VALUE;
        }
        return word(startAt) + quantity(startAt + 2) > 0x10000 ? ILLEGAL_ADDRESS : 0;
    }

    /** Whether a byte count stands at {@code at}, is {@code bytes}, and that many bytes and the check follow. */
    private boolean holds(int at, int bytes) {
        return length == at + 1 + bytes + 2 && octet(at) == bytes;
    }

    /** The quantity at {@code at}, or 0 where the frame has ended before. */
    private int quantity(int at) {
        return at + 2 <= length - 2 ? word(at) : 0;
    }

    private ModbusRequest request(int function) {
        return switch (function) {
            case 1, 2 -> new ModbusRequest.ReadBits(function, word(2), word(4));
            case 3, 4 -> new ModbusRequest.ReadRegisters(function, word(2), word(4));
            case 5 -> new ModbusRequest.WriteBit(word(2), word(4) != 0);
            case 6 -> new ModbusRequest.WriteRegister(word(2), word(4));
            case 15 -> new ModbusRequest.WriteBits(word(2), word(4), Bytes.copyOf(frame, 7, octet(6)));
            case 16 -> new ModbusRequest.WriteRegisters(word(2), words(frame, 7, word(4)));
            case 23 -> new ModbusRequest.ExchangeRegisters(word(2), word(4), word(6), words(frame, 11, word(8)));
            default -> throw new AssertionError(function);
        };
    }

    static List<Integer> words(byte[] frame, int at, int quantity) {
        List<Integer> words = new ArrayList<>(quantity);
        for (int i = 0; i < quantity; i++) {
            words.add((int) SignalPacking.get(frame, at + 2 * i, 2));
        }
        return words;
    }

    private int octet(int at) {
        return frame[at] & 0xFF;
    }

    private int word(int at) {
        return (int) SignalPacking.get(frame, at, 2);
    }
}
