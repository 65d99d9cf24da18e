package dropline.protocol.modbus;

import dropline.protocol.Bytes;
import java.util.List;

/** A protocol data unit in the making: function code, then big-endian fields. */
final class Pdu {
    /** The longest: a frame of 256 without address and check. */
    static final int LONGEST = 253;

    private final byte[] bytes = new byte[LONGEST];
    private int length;

    Pdu(int function) {
        octet(function);
    }

    Pdu octet(int value) {
        bytes[length++] = (byte) value;
        return this;
    }

    Pdu word(int value) {
        return octet(value >> 8).octet(value);
    }

    Pdu words(List<Integer> values) {
        values.forEach(this::word);
        return this;
    }

    Pdu octets(Bytes values) {
        for (int i = 0; i < values.length(); i++) {
            octet(values.at(i));
        }
        return this;
    }

    Bytes bytes() {
        return Bytes.copyOf(bytes, 0, length);
    }

    static void requireRange(int least, int most, int value, String name) {
        if (value < least || value > most) {
            throw new IllegalArgumentException(name + " must be " + least + ".." + most + ": " + name + "=" + value);
        }
    }

    static void requireAddress(int start, int quantity) {
        requireRange(0, 0xFFFF, start, "start");
        if (start + quantity > 0x10000) {
            throw new IllegalArgumentException(
                    "start plus quantity must be at most 65536: start=" + start + " quantity=" + quantity);
        }
    }

    static List<Integer> registers(List<Integer> values, int most) {
        requireRange(1, most, values.size(), "quantity");
        values.forEach(value -> requireRange(0, 0xFFFF, value, "register value"));
        return List.copyOf(values);
    }
}
