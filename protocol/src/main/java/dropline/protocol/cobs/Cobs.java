package dropline.protocol.cobs;

/**
 * Rewrites bytes so that none of them is zero, which leaves zero free to end a frame. The delimiter itself is neither
 * written nor read here.
 *
 * <p>After a full block of 254 bytes that ends the data, this encoder writes no closing code: 254 non-zero bytes become
 * 255. The listing printed with the paper (from memory) appends a code of 01 there; the decoder takes both forms.
 */
public final class Cobs {
    private static final int FULL = 0xFF;

    private Cobs() {}

    /** The longest encoding of {@code length} bytes: one byte more, and one more for every 254. */
    public static int maxEncodedLength(int length) {
        return length == 0 ? 1 : length + (length + 253) / 254;
    }

    /**
     * Encodes {@code length} bytes of {@code source} from {@code offset} into {@code target} from {@code targetOffset}.
     *
     * @return how many bytes were written
     */
    public static int encode(byte[] source, int offset, int length, byte[] target, int targetOffset) {
        int codeAt = targetOffset;
        int out = targetOffset + 1;
        int code = 1;
        int end = offset + length;
        for (int i = offset; i < end; i++) {
            if (source[i] != 0) {
                target[out++] = source[i];
                code++;
            }
            boolean blockEnds = source[i] == 0 || (code == FULL && i + 1 < end);
            if (blockEnds) {
                target[codeAt] = (byte) code;
                codeAt = out++;
                code = 1;
            }
        }
        target[codeAt] = (byte) code;
        return out - targetOffset;
    }

    /**
     * Decodes {@code length} bytes of {@code source} from {@code offset} into {@code target} from 0, which takes at
     * most {@code length} bytes.
     *
     * @return how many bytes were written, or -1 when the encoding is empty, contains a zero, or names a block that
     *     reaches beyond its end
     */
    public static int decode(byte[] source, int offset, int length, byte[] target) {
        int end = offset + length;
        int out = 0;
        int at = offset;
        if (length == 0) {
            return -1;
        }
        while (at < end) {
            int code = source[at++] & 0xFF;
            int blockEnd = at + code - 1;
            if (code == 0 || blockEnd > end) {
                return -1;
            }
            while (at < blockEnd) {
                byte next = source[at++];
                if (next == 0) {
                    return -1;
                }
                target[out++] = next;
            }
            if (code != FULL && at < end) {
                target[out++] = 0;
            }
        }
        return out;
    }
}
