package dropline.harness.recording;

/** The fixed figures of the compact form; {@code docs/recording-format.md} says what they mean. */
final class CompactFormat {
    static final int VERSION = 1;

    static final int MAGIC_LENGTH = 8;
    /** Magic, version, length of the header's body. */
    static final int HEADER_PREFIX = MAGIC_LENGTH + 2 + 4;
    /** Kind, packed length, unpacked length. */
    static final int BLOCK_PREFIX = 1 + 4 + 4;
    /** Kind, rows, moves, last time, check. */
    static final int END_LENGTH = 1 + 8 + 8 + 8 + 4;

    static final int CHECK_LENGTH = 4;

    static final int BLOCK = 'B';
    static final int END = 'E';

    static final int MOST_COLUMNS = 65_535;
    static final int MOST_HEADER_BYTES = 1 << 23;
    static final int MOST_ROWS = 512;
    static final int MOST_CELLS = 1 << 18;
    static final int MOST_MOVES = 4096;
    static final int MOST_BLOCK_BYTES = 1 << 23;

    /** How one column's values stand in one block. */
    static final int UNKNOWN = 0;

    static final int STILL = 1;
    static final int FIRST_DIFFERENCES = 2;
    static final int SECOND_DIFFERENCES = 3;
    static final int RAW = 4;

    private static final String MAGIC = "\u00D1DLR\r\n\u001A\n";

    private CompactFormat() {}

    /**
     * A byte of the magic. A byte above 127 and the line ends show at once a copy made as if it were text, an idea of
     * the PNG signature (W3C PNG, "PNG signature").
     */
    static int magic(int index) {
        return MAGIC.charAt(index);
    }

    /** Rows in a full block. */
    static int rowsPerBlock(int columns) {
        return Math.max(1, Math.min(MOST_ROWS, MOST_CELLS / Math.max(1, columns)));
    }
}
