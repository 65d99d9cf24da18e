package dropline.harness.recording;

/** The fixed figures of a journal; {@code docs/recording-format.md} says what they mean. */
final class JournalFormat {
    static final int VERSION = 1;

    static final int MAGIC_LENGTH = 8;
    /** Magic, version. */
    static final int HEADER_LENGTH = MAGIC_LENGTH + 2;
    /** Kind, length of the body. */
    static final int PREFIX = 1 + 4;

    static final int CHECK_LENGTH = 4;

    static final int BATCH = 'B';
    static final int END = 'E';

    static final int MOST_BODY = 1 << 24;

    /** How a value stands: 0..15 a whole number of so many decimals, or one of these. */
    static final int FLOAT = 16;

    static final int DOUBLE = 17;

    private static final String MAGIC = "\u00D1DLJ\r\n\u001A\n";

    private JournalFormat() {}

    /** A byte of the magic, chosen as for the compact form. */
    static int magic(int index) {
        return MAGIC.charAt(index);
    }

    static boolean begins(byte[] first) {
        int same = 0;
        while (same < first.length && same < MAGIC_LENGTH && (first[same] & 0xFF) == magic(same)) {
            same++;
        }
        return same == MAGIC_LENGTH;
    }
}
