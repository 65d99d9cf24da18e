package dropline.harness.recording;

import java.io.BufferedOutputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.zip.GZIPOutputStream;

/** A file that grows beside its place under another name and takes its place when it is whole. */
final class PendingFile implements Closeable {
    private final Path place;
    private final Path grown;
    private final OutputStream out;
    private boolean done;

    PendingFile(Path place, boolean gzip) throws IOException {
        this.place = place;
        this.grown = place.resolveSibling(
                place.getFileName() + "." + ProcessHandle.current().pid() + ".part");
        OutputStream file = new BufferedOutputStream(Files.newOutputStream(grown), 1 << 16);
        this.out = gzip ? new GZIPOutputStream(file, 1 << 13) : file;
    }

    OutputStream out() {
        return out;
    }

    void putInPlace() throws IOException {
        out.close();
        try {
            Files.move(grown, place, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(grown, place, StandardCopyOption.REPLACE_EXISTING);
        }
        done = true;
    }

    /** Drops what has grown, unless it has been put in place. */
    @Override
    public void close() throws IOException {
        if (!done) {
            done = true;
            try {
                out.close();
            } finally {
                Files.deleteIfExists(grown);
            }
        }
    }
}
