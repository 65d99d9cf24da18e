package dropline.protocol.crc;

import java.util.Locale;

/**
 * A cyclic redundancy check described by the parameters of Ross Williams' Rocksoft model ("A painless guide to CRC
 * error detection algorithms", 1993).
 *
 * @param name as the reader knows it
 * @param width register width in bits: 8, 16 or 32
 * @param polynomial without its top bit, most significant bit first
 * @param initial the register before the first byte
 * @param reflectIn whether each byte enters least significant bit first
 * @param reflectOut whether the register is mirrored before the final exclusive-or
 * @param finalXor exclusive-or applied to the result
 */
public record CrcParameters(
        String name, int width, long polynomial, long initial, boolean reflectIn, boolean reflectOut, long finalXor) {

    public CrcParameters {
        if (width != 8 && width != 16 && width != 32) {
            throw new IllegalArgumentException("CRC width must be 8, 16 or 32: width=" + width);
        }
        requireFits(width, polynomial, "polynomial");
        requireFits(width, initial, "initial");
        requireFits(width, finalXor, "finalXor");
        if ((polynomial & 1) == 0) {
            throw new IllegalArgumentException(
                    String.format(Locale.ROOT, "CRC polynomial must be odd: polynomial=0x%X", polynomial));
        }
    }

    /** Ones in the {@code width} low bits. */
    public long mask() {
        return (1L << width) - 1;
    }

    private static void requireFits(int width, long value, String field) {
        if (value < 0 || value >= 1L << width) {
            throw new IllegalArgumentException(
                    String.format(Locale.ROOT, "CRC %s must fit in %d bits: %s=0x%X", field, width, field, value));
        }
    }
}
