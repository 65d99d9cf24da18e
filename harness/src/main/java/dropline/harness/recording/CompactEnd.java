package dropline.harness.recording;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Path;
import java.util.OptionalLong;
import java.util.zip.CRC32;

/** The last bytes of a compact recording, read without what lies before them. */
final class CompactEnd {
    private static final int LAST_TIME = 1 + 8 + 8;

    private CompactEnd() {}

    /** Time of the last row or move, ns; empty for any other form, one that is packed, or one that was cut. */
    static OptionalLong lastNanos(Path file) throws IOException {
        byte[] magic = new byte[CompactFormat.MAGIC_LENGTH];
        byte[] end = new byte[CompactFormat.END_LENGTH];
        try (RandomAccessFile bytes = new RandomAccessFile(file.toFile(), "r")) {
            if (bytes.length() < magic.length + end.length) {
                return OptionalLong.empty();
            }
            bytes.readFully(magic);
            bytes.seek(bytes.length() - end.length);
            bytes.readFully(end);
        }
        return isMagic(magic) && isEnd(end) ? OptionalLong.of(little(end, LAST_TIME, 8)) : OptionalLong.empty();
    }

    private static boolean isMagic(byte[] bytes) {
        for (int i = 0; i < bytes.length; i++) {
            if ((bytes[i] & 0xFF) != CompactFormat.magic(i)) {
                return false;
            }
        }
        return true;
    }

    private static boolean isEnd(byte[] bytes) {
        int checked = bytes.length - CompactFormat.CHECK_LENGTH;
        CRC32 check = new CRC32();
        check.update(bytes, 0, checked);
        return bytes[0] == CompactFormat.END && check.getValue() == little(bytes, checked, CompactFormat.CHECK_LENGTH);
    }

    private static long little(byte[] bytes, int at, int count) {
        long value = 0;
        for (int i = 0; i < count; i++) {
            value |= (bytes[at + i] & 0xFFL) << (8 * i);
        }
        return value;
    }
}
