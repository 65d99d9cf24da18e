package dropline.harness.recording;

import java.io.BufferedInputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.CRC32;
import org.jspecify.annotations.Nullable;

/** The batches of a journal that are whole, up to its end or to the first that is torn. */
final class JournalRecords implements Closeable {
    private final InputStream in;
    private final long fileLength;
    private long bytesRead;
    private boolean ended;

    private JournalRecords(InputStream in, long fileLength) {
        this.in = in;
        this.fileLength = fileLength;
    }

    static JournalRecords open(Path file) throws IOException {
        InputStream in = new BufferedInputStream(Files.newInputStream(file), 1 << 16);
        try {
            JournalRecords records = new JournalRecords(in, Files.size(file));
            records.header(file);
            return records;
        } catch (IOException | RuntimeException e) {
            in.close();
            throw e;
        }
    }

    private void header(Path file) throws IOException {
        byte[] header = in.readNBytes(JournalFormat.HEADER_LENGTH);
        if (header.length < JournalFormat.HEADER_LENGTH || !JournalFormat.begins(header)) {
            throw RecordingProblems.one(RecordingProblems.damagedHeader(file.toString(), "the file ends inside it"));
        }
        int version = (header[header.length - 2] & 0xFF) | (header[header.length - 1] & 0xFF) << 8;
        if (version != JournalFormat.VERSION) {
            throw RecordingProblems.one(RecordingProblems.unknownVersion(file.toString(), version));
        }
        bytesRead = header.length;
    }

    /** The next batch's body; null where no whole one follows. */
    @Nullable
    ByteCursor next() throws IOException {
        byte[] prefix = in.readNBytes(JournalFormat.PREFIX);
        if (ended || prefix.length < JournalFormat.PREFIX) {
            return null;
        }
        try {
            ByteCursor cursor = new ByteCursor(prefix, prefix.length);
            int kind = cursor.u8();
            long length = cursor.little(4);
            if (length > Math.min(JournalFormat.MOST_BODY, bytesLeft() - prefix.length)) {
                return null;
            }
            byte[] body = in.readNBytes((int) length);
            byte[] check = in.readNBytes(JournalFormat.CHECK_LENGTH);
            if (body.length < length || !matches(prefix, body, check)) {
                return null;
            }
            bytesRead += prefix.length + body.length + check.length;
            ended = kind == JournalFormat.END;
            return kind == JournalFormat.BATCH ? new ByteCursor(body, body.length) : null;
        } catch (DamageException e) {
            throw new AssertionError(e);
        }
    }

    private static boolean matches(byte[] prefix, byte[] body, byte[] stored) throws DamageException {
        CRC32 check = new CRC32();
        check.update(prefix);
        check.update(body);
        return stored.length == JournalFormat.CHECK_LENGTH
                && new ByteCursor(stored, stored.length).little(stored.length) == check.getValue();
    }

    /** Whether the journal was brought to its end and that was reached. */
    boolean ended() {
        return ended;
    }

    /** Bytes of whole batches so far. */
    long bytesRead() {
        return bytesRead;
    }

    long fileLength() {
        return fileLength;
    }

    /** Bytes behind the last whole batch. */
    long bytesLeft() {
        return fileLength - bytesRead;
    }

    @Override
    public void close() throws IOException {
        in.close();
    }
}
