package dropline.harness.stream;

import java.util.Locale;

/** How a number stands in a binary datagram; the floats are those of IEEE 754. */
enum NumberForm {
    UINT8(1),
    UINT16(2),
    UINT32(4),
    INT8(1),
    INT16(2),
    INT32(4),
    FLOAT32(4),
    FLOAT64(8);

    private final int length;

    NumberForm(int length) {
        this.length = length;
    }

    /** Bytes it takes. */
    int length() {
        return length;
    }

    /** As written in a datagram file. */
    String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Whether it can count: whole and never negative. */
    boolean counts() {
        return this == UINT8 || this == UINT16 || this == UINT32;
    }

    double read(byte[] bytes, int at, boolean little) {
        long bits = 0;
        for (int i = 0; i < length; i++) {
            bits = bits << 8 | bytes[little ? at + length - 1 - i : at + i] & 0xFF;
        }
        return switch (this) {
            case UINT8, UINT16, UINT32 -> bits;
            case INT8 -> (byte) bits;
            case INT16 -> (short) bits;
            case INT32 -> (int) bits;
            case FLOAT32 -> Float.intBitsToFloat((int) bits);
            case FLOAT64 -> Double.longBitsToDouble(bits);
        };
    }
}
