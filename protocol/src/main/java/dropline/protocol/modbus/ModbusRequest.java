package dropline.protocol.modbus;

import dropline.protocol.Bytes;
import java.util.List;

/**
 * What a controller asks (MODBUS application protocol V1.1b3, section 6). Addresses are those on the wire, counted from
 * 0; quantities are held to the specification's limits.
 */
public sealed interface ModbusRequest {
    int MOST_BITS_READ = 2000;
    int MOST_BITS_WRITTEN = 1968;
    int MOST_REGISTERS_READ = 125;
    int MOST_REGISTERS_WRITTEN = 123;
    int MOST_REGISTERS_EXCHANGED = 121;

    /** The function code, 1..127. */
    int function();

    /** Whether it may be sent to all nodes: only what writes and reads nothing. */
    boolean mayBroadcast();

    /** Bytes of the node's whole answer on the wire, address and check included, unless it is an exception. */
    int responseLength();

    /** Function code and data, without address and check. */
    Bytes pdu();

    /** Function 1, coils, or 2, discrete inputs; 1..2000 of them. */
    record ReadBits(int function, int start, int quantity) implements ModbusRequest {
        public ReadBits {
            Pdu.requireRange(1, 2, function, "function");
            Pdu.requireRange(1, MOST_BITS_READ, quantity, "quantity");
            Pdu.requireAddress(start, quantity);
        }

        @Override
        public boolean mayBroadcast() {
            return false;
        }

        @Override
        public int responseLength() {
            return 5 + (quantity + 7) / 8;
        }

        @Override
        public Bytes pdu() {
            return new Pdu(function).word(start).word(quantity).bytes();
        }
    }

    /** Function 3, holding registers, or 4, input registers; 1..125 of them. */
    record ReadRegisters(int function, int start, int quantity) implements ModbusRequest {
        public ReadRegisters {
            Pdu.requireRange(3, 4, function, "function");
            Pdu.requireRange(1, MOST_REGISTERS_READ, quantity, "quantity");
            Pdu.requireAddress(start, quantity);
        }

        @Override
        public boolean mayBroadcast() {
            return false;
        }

        @Override
        public int responseLength() {
            return 5 + 2 * quantity;
        }

        @Override
        public Bytes pdu() {
            return new Pdu(function).word(start).word(quantity).bytes();
        }
    }

    /** Function 5: one coil. */
    record WriteBit(int start, boolean on) implements ModbusRequest {
        public WriteBit {
            Pdu.requireAddress(start, 1);
        }

        @Override
        public int function() {
            return 5;
        }

        @Override
        public boolean mayBroadcast() {
            return true;
        }

        @Override
        public int responseLength() {
            return 8;
        }

        @Override
        public Bytes pdu() {
            return new Pdu(5).word(start).word(on ? 0xFF00 : 0).bytes();
        }
    }

    /** Function 6: one holding register, 0..65535. */
    record WriteRegister(int start, int value) implements ModbusRequest {
        public WriteRegister {
            Pdu.requireAddress(start, 1);
            Pdu.requireRange(0, 0xFFFF, value, "register value");
        }

        @Override
        public int function() {
            return 6;
        }

        @Override
        public boolean mayBroadcast() {
            return true;
        }

        @Override
        public int responseLength() {
            return 8;
        }

        @Override
        public Bytes pdu() {
            return new Pdu(6).word(start).word(value).bytes();
        }
    }

    /**
     * Function 15: 1..1968 coils.
     *
     * @param packed eight coils a byte, the first in the lowest bit of the first byte
     */
    record WriteBits(int start, int quantity, Bytes packed) implements ModbusRequest {
        public WriteBits {
            Pdu.requireRange(1, MOST_BITS_WRITTEN, quantity, "quantity");
            Pdu.requireAddress(start, quantity);
            Pdu.requireRange((quantity + 7) / 8, (quantity + 7) / 8, packed.length(), "packed bytes");
        }

        @Override
        public int function() {
            return 15;
        }

        @Override
        public boolean mayBroadcast() {
            return true;
        }

        @Override
        public int responseLength() {
            return 8;
        }

        @Override
        public Bytes pdu() {
            Pdu pdu = new Pdu(15).word(start).word(quantity).octet(packed.length());
            return pdu.octets(packed).bytes();
        }
    }

    /** Function 16: 1..123 holding registers, each 0..65535. */
    record WriteRegisters(int start, List<Integer> values) implements ModbusRequest {
        public WriteRegisters {
            values = Pdu.registers(values, MOST_REGISTERS_WRITTEN);
            Pdu.requireAddress(start, values.size());
        }

        @Override
        public int function() {
            return 16;
        }

        @Override
        public boolean mayBroadcast() {
            return true;
        }

        @Override
        public int responseLength() {
            return 8;
        }

        @Override
        public Bytes pdu() {
            Pdu pdu = new Pdu(16).word(start).word(values.size()).octet(2 * values.size());
            return pdu.words(values).bytes();
        }
    }

    /** Function 23: writes 1..121 holding registers, then (from memory: in this order) reads 1..125. */
    record ExchangeRegisters(int readStart, int readQuantity, int writeStart, List<Integer> values)
            implements ModbusRequest {
        public ExchangeRegisters {
            Pdu.requireRange(1, MOST_REGISTERS_READ, readQuantity, "read quantity");
            Pdu.requireAddress(readStart, readQuantity);
            values = Pdu.registers(values, MOST_REGISTERS_EXCHANGED);
            Pdu.requireAddress(writeStart, values.size());
        }

        @Override
        public int function() {
            return 23;
        }

        @Override
        public boolean mayBroadcast() {
            return false;
        }

        @Override
        public int responseLength() {
            return 5 + 2 * readQuantity;
        }

        @Override
        public Bytes pdu() {
            Pdu pdu = new Pdu(23).word(readStart).word(readQuantity);
            pdu.word(writeStart).word(values.size()).octet(2 * values.size());
            return pdu.words(values).bytes();
        }
    }
}
