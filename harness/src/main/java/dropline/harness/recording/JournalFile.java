package dropline.harness.recording;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;

/** Where a journal's bytes go: they are only ever added at the end. */
public interface JournalFile extends Closeable {

    /**
     * A new file on disk, held so that no other process records into it.
     *
     * @throws java.nio.file.FileAlreadyExistsException if there is one
     */
    static JournalFile create(Path file) throws IOException {
        return DiskJournalFile.create(file);
    }

    /** Whether some process is recording into an existing file. */
    static boolean isInUse(Path file) throws IOException {
        return DiskJournalFile.isInUse(file);
    }

    /** Adds bytes; if this fails, some of them may have been added. */
    void append(byte[] bytes, int count) throws IOException;

    /** Drops all but the first bytes. */
    void cutTo(long length) throws IOException;

    /** Does not return before the disk itself holds what was added. */
    void force() throws IOException;
}
