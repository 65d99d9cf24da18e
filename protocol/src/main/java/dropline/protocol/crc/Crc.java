package dropline.protocol.crc;

import dropline.protocol.Bytes;

/**
 * Computes one kind of check, a table look-up a byte. Immutable: the running register is the caller's, so that any
 * number of frames can be in progress.
 *
 * <pre>{@code
 * long register = crc.start();
 * for each byte b: register = crc.update(register, b);
 * long check = crc.finish(register);
 * }</pre>
 */
public final class Crc {
    private final CrcParameters parameters;
    private final long[] table = new long[256];
    private final long start;
    private final int width;
    private final long mask;

    public Crc(CrcParameters parameters) {
        this.parameters = parameters;
        this.width = parameters.width();
        this.mask = parameters.mask();
        this.start = parameters.reflectIn() ? mirror(parameters.initial(), width) : parameters.initial();
        for (int i = 0; i < 256; i++) {
            table[i] = parameters.reflectIn() ? reflectedEntry(i) : plainEntry(i);
        }
    }

    public CrcParameters parameters() {
        return parameters;
    }

    /** The register before the first byte. */
    public long start() {
        return start;
    }

    /** The register after one more byte, of which the low eight bits count. */
    public long update(long register, int next) {
        if (parameters.reflectIn()) {
            return (register >>> 8) ^ table[(int) (register ^ next) & 0xFF];
        }
        return ((register << 8) & mask) ^ table[(int) ((register >>> (width - 8)) ^ next) & 0xFF];
    }

    /** The check that belongs to a register. */
    public long finish(long register) {
        long out = parameters.reflectIn() == parameters.reflectOut() ? register : mirror(register, width);
        return out ^ parameters.finalXor();
    }

    /** The check of {@code length} bytes from {@code offset}. */
    public long of(byte[] bytes, int offset, int length) {
        long register = start;
        for (int i = offset; i < offset + length; i++) {
            register = update(register, bytes[i]);
        }
        return finish(register);
    }

    /** The check of all bytes. */
    public long of(Bytes bytes) {
        long register = start;
        for (int i = 0; i < bytes.length(); i++) {
            register = update(register, bytes.at(i));
        }
        return finish(register);
    }

    private long plainEntry(int index) {
        long register = (long) index << (width - 8);
        for (int bit = 0; bit < 8; bit++) {
            boolean top = (register >>> (width - 1) & 1) != 0;
            register = (register << 1) & mask;
            register ^= top ? parameters.polynomial() : 0;
        }
        return register;
    }

    private long reflectedEntry(int index) {
        long mirrored = mirror(parameters.polynomial(), width);
        long register = index;
        for (int bit = 0; bit < 8; bit++) {
            boolean low = (register & 1) != 0;
            register >>>= 1;
            register ^= low ? mirrored : 0;
        }
        return register;
    }

    private static long mirror(long value, int width) {
        return Long.reverse(value) >>> (64 - width);
    }
}
