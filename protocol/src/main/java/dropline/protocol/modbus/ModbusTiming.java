package dropline.protocol.modbus;

import dropline.protocol.CharacterFormat;

/**
 * The two silences of Modbus RTU (MODBUS over serial line V1.02, section 2.5.1.1): 3.5 characters between frames, and
 * at most 1.5 characters inside one. Up to and at 19200 baud they follow the character; above, they are 1750 us and 750
 * us. Results are rounded up, so that a timer set to them is never shorter than the rule.
 */
public final class ModbusTiming {
    private static final int FASTEST_BY_CHARACTER = 19_200;
    private static final long FIXED_FRAME_GAP_NANOS = 1_750_000;
    private static final long FIXED_CHARACTER_GAP_NANOS = 750_000;

    private ModbusTiming() {}

    /** t3.5 in tenths of a bit time; at least this much silence ends a frame. */
    public static int frameGapTenthsOfBit(int baud, CharacterFormat format) {
        return byCharacter(baud) ? 35 * format.bits() : tenths(FIXED_FRAME_GAP_NANOS, baud);
    }

    /** t1.5 in tenths of a bit time; more silence than this inside a frame spoils it. */
    public static int characterGapTenthsOfBit(int baud, CharacterFormat format) {
        return byCharacter(baud) ? 15 * format.bits() : tenths(FIXED_CHARACTER_GAP_NANOS, baud);
    }

    /** t3.5 in nanoseconds. */
    public static long frameGapNanos(int baud, CharacterFormat format) {
        return byCharacter(baud) ? nanos(35 * format.bits(), baud) : FIXED_FRAME_GAP_NANOS;
    }

    /** t1.5 in nanoseconds. */
    public static long characterGapNanos(int baud, CharacterFormat format) {
        return byCharacter(baud) ? nanos(15 * format.bits(), baud) : FIXED_CHARACTER_GAP_NANOS;
    }

    private static boolean byCharacter(int baud) {
        if (baud < 1) {
            throw new IllegalArgumentException("baud must be at least 1: baud=" + baud);
        }
        return baud <= FASTEST_BY_CHARACTER;
    }

    private static int tenths(long nanos, int baud) {
        return Math.toIntExact((nanos * baud + 99_999_999) / 100_000_000);
    }

    private static long nanos(int tenths, int baud) {
        return (tenths * 100_000_000L + baud - 1) / baud;
    }
}
