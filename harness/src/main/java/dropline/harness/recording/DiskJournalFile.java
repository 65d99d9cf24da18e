package dropline.harness.recording;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** A journal's file, locked as long as it grows. */
final class DiskJournalFile implements JournalFile {
    /** The lock lies far behind the file's end: on Windows nobody can read what is locked. */
    private static final long LOCK_AT = Long.MAX_VALUE - 1;

    private final FileChannel channel;

    private DiskJournalFile(FileChannel channel) {
        this.channel = channel;
    }

    static DiskJournalFile create(Path file) throws IOException {
        FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        if (!locked(channel)) {
            channel.close();
            throw new IOException(file + " is in use");
        }
        return new DiskJournalFile(channel);
    }

    /** Whether somebody is recording into an existing file. */
    static boolean isInUse(Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            return !locked(channel);
        }
    }

    private static boolean locked(FileChannel channel) throws IOException {
        try {
            return channel.tryLock(LOCK_AT, 1, false) != null;
        } catch (OverlappingFileLockException e) {
            return false;
        }
    }

    @Override
    public void append(byte[] bytes, int count) throws IOException {
        ByteBuffer left = ByteBuffer.wrap(bytes, 0, count);
        while (left.hasRemaining()) {
            channel.write(left);
        }
    }

    @Override
    public void cutTo(long length) throws IOException {
        channel.truncate(length);
    }

    @Override
    public void force() throws IOException {
        channel.force(false);
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
