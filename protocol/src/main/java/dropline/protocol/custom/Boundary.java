package dropline.protocol.custom;

import dropline.protocol.CharacterFormat;
import org.jspecify.annotations.Nullable;

/** How a receiver knows where a frame begins and ends. */
public sealed interface Boundary {

    /**
     * By bytes that stand nowhere else.
     *
     * @param start begins a frame, 0..255; {@link #NO_START} where a frame begins after the last one's end
     * @param end ends it, 0..255
     * @param escape how such a byte is hidden inside a frame; null where it is not
     */
    record Delimiters(int start, int end, @Nullable Escape escape) implements Boundary {
        /** In place of a start byte. */
        public static final int NO_START = -1;

        /** Whether a byte must be hidden inside a frame. */
        boolean isSpecial(int value) {
            return value == start || value == end || (escape != null && value == escape.with());
        }
    }

    /**
     * Byte stuffing: in place of a start, end or escape byte go the escape byte and the byte's exclusive-or.
     *
     * @param with the escape byte, 0..255
     * @param xor turned in the byte that follows, 1..255
     */
    record Escape(int with, int xor) {}

    /** What a silence is counted in. */
    enum SilenceUnit {
        CHARACTERS,
        BITS,
        MICROSECONDS
    }

    /**
     * By silence before and after it.
     *
     * @param thousandths of the unit, 1 or more: 3500 characters are three and a half
     */
    record Gap(long thousandths, SilenceUnit unit) implements Boundary {
        /** The silence, in tenths of a bit, rounded up. */
        public int tenthsOfBit(int baud, CharacterFormat format) {
            long perUnit =
                    switch (unit) {
                        case CHARACTERS -> 10_000_000L * format.bits();
                        case BITS -> 10_000_000L;
                        case MICROSECONDS -> 10L * baud;
                    };
            long tenths = (thousandths * perUnit + 999_999_999L) / 1_000_000_000L;
            return Math.toIntExact(Math.min(tenths, Integer.MAX_VALUE));
        }
    }

    /** By the constant it begins with and a length, or a length that never varies. */
    record Counted() implements Boundary {}
}
