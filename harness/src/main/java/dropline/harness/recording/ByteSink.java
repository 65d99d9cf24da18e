package dropline.harness.recording;

import java.util.Arrays;

/** Bytes being put together: little-endian numbers and numbers of varying length. */
final class ByteSink {
    private byte[] bytes = new byte[1024];
    private int length;

    void clear() {
        length = 0;
    }

    int length() {
        return length;
    }

    byte[] bytes() {
        return bytes;
    }

    void u8(int value) {
        if (length == bytes.length) {
            bytes = Arrays.copyOf(bytes, length * 2);
        }
        bytes[length++] = (byte) value;
    }

    /** So many low bytes of a value, lowest first. */
    void little(long value, int count) {
        for (int i = 0; i < count; i++) {
            u8((int) (value >>> (8 * i)));
        }
    }

    /** Seven bits a byte, lowest first, the top bit set in all but the last. */
    void varint(long value) {
        long rest = value;
        while ((rest & ~0x7FL) != 0) {
            u8((int) (rest & 0x7F) | 0x80);
            rest >>>= 7;
        }
        u8((int) rest);
    }

    /** A signed number, zigzag: 0, -1, 1, -2 as 0, 1, 2, 3. */
    void signed(long value) {
        varint(zigzag(value));
    }

    void append(byte[] from, int count) {
        if (bytes.length - length < count) {
            bytes = Arrays.copyOf(bytes, Math.max(bytes.length * 2, length + count));
        }
        System.arraycopy(from, 0, bytes, length, count);
        length += count;
    }

    static long zigzag(long value) {
        return (value << 1) ^ (value >> 63);
    }

    /** Bytes that {@link #signed} takes. */
    static int signedLength(long value) {
        return (63 - Long.numberOfLeadingZeros(zigzag(value) | 1)) / 7 + 1;
    }
}
