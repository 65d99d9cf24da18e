package dropline.protocol.modbus;

import dropline.protocol.Bytes;
import java.util.List;

/** What a node answers (MODBUS application protocol V1.1b3, sections 6 and 7). */
public sealed interface ModbusResponse {

    /** The function code asked for, 1..127, without an exception's top bit. */
    int function();

    /** Function code and data, without address and check. */
    Bytes pdu();

    /**
     * To functions 1 and 2.
     *
     * @param packed 1..250 bytes, eight states a byte, the first in the lowest bit of the first byte
     */
    record Bits(int function, Bytes packed) implements ModbusResponse {
        public Bits {
            Pdu.requireRange(1, 2, function, "function");
            Pdu.requireRange(1, ModbusRequest.MOST_BITS_READ / 8, packed.length(), "packed bytes");
        }

        @Override
        public Bytes pdu() {
            return new Pdu(function).octet(packed.length()).octets(packed).bytes();
        }
    }

    /** To functions 3, 4 and 23: 1..125 registers, each 0..65535. */
    record Registers(int function, List<Integer> values) implements ModbusResponse {
        public Registers {
            if (function != 3 && function != 4 && function != 23) {
                throw new IllegalArgumentException("function must be 3, 4 or 23: function=" + function);
            }
            values = Pdu.registers(values, ModbusRequest.MOST_REGISTERS_READ);
        }

        @Override
        public Bytes pdu() {
            return new Pdu(function).octet(2 * values.size()).words(values).bytes();
        }
    }

    /** To function 5: the request again. */
    record BitWritten(int start, boolean on) implements ModbusResponse {
        public BitWritten {
            Pdu.requireAddress(start, 1);
        }

        @Override
        public int function() {
            return 5;
        }

        @Override
        public Bytes pdu() {
            return new Pdu(5).word(start).word(on ? 0xFF00 : 0).bytes();
        }
    }

    /** To function 6: the request again. */
    record RegisterWritten(int start, int value) implements ModbusResponse {
        public RegisterWritten {
            Pdu.requireAddress(start, 1);
            Pdu.requireRange(0, 0xFFFF, value, "register value");
        }

        @Override
        public int function() {
            return 6;
        }

        @Override
        public Bytes pdu() {
            return new Pdu(6).word(start).word(value).bytes();
        }
    }

    /** To functions 15 and 16: where and how many. */
    record RangeWritten(int function, int start, int quantity) implements ModbusResponse {
        public RangeWritten {
            Pdu.requireRange(15, 16, function, "function");
            int most = function == 15 ? ModbusRequest.MOST_BITS_WRITTEN : ModbusRequest.MOST_REGISTERS_WRITTEN;
            Pdu.requireRange(1, most, quantity, "quantity");
            Pdu.requireAddress(start, quantity);
        }

        @Override
        public Bytes pdu() {
            return new Pdu(function).word(start).word(quantity).bytes();
        }
    }

    /**
     * An exception response: the node understood that it was asked, and refuses.
     *
     * @param code 1 illegal function, 2 illegal data address, 3 illegal data value, 4 server device failure, or another
     *     of 1..255
     */
    record Refusal(int function, int code) implements ModbusResponse {
        public Refusal {
            Pdu.requireRange(1, 127, function, "function");
            Pdu.requireRange(1, 255, code, "exception code");
        }

        @Override
        public Bytes pdu() {
            return new Pdu(function + 0x80).octet(code).bytes();
        }
    }
}
