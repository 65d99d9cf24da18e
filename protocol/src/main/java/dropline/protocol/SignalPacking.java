package dropline.protocol;

/**
 * How a value becomes bytes: two's complement, most significant byte first, modulo the width.
 *
 * <p>A value is an integer in units of its signal's resolution. Since packing is modulo 2^8, 2^16 or 2^32, a signal
 * needs only enough codes for its range, wherever that range lies: {@link #unpack} finds the one value at or above the
 * range's lower end that has these bytes.
 */
public final class SignalPacking {

    private SignalPacking() {}

    /**
     * Bytes that hold every value of a range: 1, 2 or 4.
     *
     * @param steps range divided by resolution, that is highest minus lowest value; 0..4294967295
     */
    public static int valueBytes(long steps) {
        if (steps < 0 || steps > 0xFFFF_FFFFL) {
            throw new IllegalArgumentException("steps must be 0..4294967295: steps=" + steps);
        }
        if (steps <= 0xFF) {
            return 1;
        }
        return steps <= 0xFFFF ? 2 : 4;
    }

    /** The low {@code 8 * valueBytes} bits of a value, as an unsigned number: what travels. */
    public static long pack(long value, int valueBytes) {
        return value & (-1L >>> (64 - 8 * valueBytes));
    }

    /** Writes a value at {@code offset}, most significant byte first; returns the offset after it. */
    public static int put(long value, int valueBytes, byte[] target, int offset) {
        int at = offset;
        for (int shift = 8 * (valueBytes - 1); shift >= 0; shift -= 8) {
            target[at++] = (byte) (value >> shift);
        }
        return at;
    }

    /** Reads {@code valueBytes} bytes at {@code offset} as an unsigned number. */
    public static long get(byte[] source, int offset, int valueBytes) {
        long packed = 0;
        for (int i = 0; i < valueBytes; i++) {
            packed = (packed << 8) | (source[offset + i] & 0xFF);
        }
        return packed;
    }

    /** The value in {@code lowest .. lowest + 2^(8 * valueBytes) - 1} that packs to {@code packed}. */
    public static long unpack(long packed, int valueBytes, long lowest) {
        return lowest + pack(packed - lowest, valueBytes);
    }
}
