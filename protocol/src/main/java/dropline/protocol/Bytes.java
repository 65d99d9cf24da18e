package dropline.protocol;

import java.util.Arrays;
import java.util.HexFormat;

/** A few bytes, immutable, equal by value, printed as hexadecimal pairs. */
public final class Bytes {
    private static final HexFormat PAIRS = HexFormat.ofDelimiter(" ").withUpperCase();

    private final byte[] bytes;

    private Bytes(byte[] bytes) {
        this.bytes = bytes;
    }

    /** Copies {@code length} bytes from {@code offset}. */
    public static Bytes copyOf(byte[] source, int offset, int length) {
        return new Bytes(Arrays.copyOfRange(source, offset, offset + length));
    }

    /** Each value's low eight bits. */
    public static Bytes of(int... values) {
        byte[] bytes = new byte[values.length];
        for (int i = 0; i < values.length; i++) {
            bytes[i] = (byte) values[i];
        }
        return new Bytes(bytes);
    }

    /** From pairs separated by spaces: {@code "01 03 00 6B"}. */
    public static Bytes ofHex(String pairs) {
        return new Bytes(PAIRS.parseHex(pairs));
    }

    /** The byte at {@code index}, 0..255. */
    public int at(int index) {
        return bytes[index] & 0xFF;
    }

    public int length() {
        return bytes.length;
    }

    /** Those from an index up to another. */
    public Bytes part(int from, int to) {
        return new Bytes(Arrays.copyOfRange(bytes, from, to));
    }

    /** A copy. */
    public byte[] toArray() {
        return bytes.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Bytes that && Arrays.equals(bytes, that.bytes);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(bytes);
    }

    @Override
    public String toString() {
        return PAIRS.formatHex(bytes);
    }
}
