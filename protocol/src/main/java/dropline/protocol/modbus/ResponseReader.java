package dropline.protocol.modbus;

import dropline.protocol.Bytes;
import dropline.protocol.Decoded;
import dropline.protocol.Decoded.Reason;
import dropline.protocol.SignalPacking;
import org.jspecify.annotations.Nullable;

/** Reads a frame whose check is right as a response. */
final class ResponseReader {
    private final byte[] frame;
    private final int length;

    /** @param length of the whole frame, 4..256 */
    ResponseReader(byte[] frame, int length) {
        this.frame = frame;
        this.length = length;
    }

    Decoded<ModbusFrame> read() {
        int address = octet(0);
        Reason reason = address == 0 || address > ModbusFrame.HIGHEST_ADDRESS ? Reason.BAD_ADDRESS : problem(octet(1));
        return reason != null
                ? new Decoded.Rejected<>(reason, length)
                : new Decoded.Complete<>(new ModbusFrame.Response(address, response(octet(1))), length);
    }

    private @Nullable Reason problem(int function) {
        if (function > 0x80) {
            return lengthOr(length == 5, octet(2) != 0);
        }
        return switch (function) {
            case 1, 2 ->
                lengthOr(length == 5 + octet(2), octet(2) >= 1 && octet(2) <= ModbusRequest.MOST_BITS_READ / 8);
            case 3, 4, 23 -> lengthOr(length == 5 + octet(2), octet(2) >= 2 && octet(2) % 2 == 0);
            case 5 -> lengthOr(length == 8, word(4) == 0 || word(4) == 0xFF00);
            case 6 -> lengthOr(length == 8, true);
            case 15 -> lengthOr(length == 8, range(ModbusRequest.MOST_BITS_WRITTEN));
            case 16 -> lengthOr(length == 8, range(ModbusRequest.MOST_REGISTERS_WRITTEN));
            default -> Reason.BAD_KIND;
        };
    }

    private static @Nullable Reason lengthOr(boolean lengthRight, boolean valuesRight) {
        if (!lengthRight) {
            return Reason.BAD_LENGTH;
        }
        return valuesRight ? null : Reason.BAD_VALUE;
    }

    private boolean range(int most) {
        return word(4) >= 1 && word(4) <= most && word(2) + word(4) <= 0x10000;
    }

    private ModbusResponse response(int function) {
        if (function > 0x80) {
            return new ModbusResponse.Refusal(function - 0x80, octet(2));
        }
        return switch (function) {
            case 1, 2 -> new ModbusResponse.Bits(function, Bytes.copyOf(frame, 3, octet(2)));
            case 3, 4, 23 -> new ModbusResponse.Registers(function, RequestReader.words(frame, 3, octet(2) / 2));
            case 5 -> new ModbusResponse.BitWritten(word(2), word(4) != 0);
            case 6 -> new ModbusResponse.RegisterWritten(word(2), word(4));
            case 15, 16 -> new ModbusResponse.RangeWritten(function, word(2), word(4));
            default -> throw new AssertionError(function);
        };
    }

    private int octet(int at) {
        return frame[at] & 0xFF;
    }

    private int word(int at) {
        return (int) SignalPacking.get(frame, at, 2);
    }
}
