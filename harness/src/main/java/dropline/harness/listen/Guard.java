package dropline.harness.listen;

import dropline.harness.link.Arrival;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Keeps only the time around trouble, so that one may listen for weeks: what came a while before it, and a while after,
 * as a capture of its own. Memory and disk have limits.
 */
public final class Guard implements Closeable {
    /** What came before trouble is held in memory; so many bytes of it at most. */
    private static final long MOST_HELD = 32_000_000;

    /** A line of a capture for a byte, by and large. */
    private static final int LINE_BYTES = 16;

    private final Path folder;
    private final long beforeNanos;
    private final long afterNanos;
    private final long mostBytes;
    private final ArrayDeque<Arrival.Received> held = new ArrayDeque<>();
    private long heldBytes;
    private long writtenBytes;
    private long knownTroubles;
    private long untilNanos;
    private int files;
    private boolean isFull;
    private @Nullable CaptureFile file;

    /**
     * @param folder where captures go; must be there
     * @param beforeNanos how much before trouble is kept, ns
     * @param afterNanos how much after it, ns
     * @param mostBytes all captures together take so much of the disk at most
     */
    public Guard(Path folder, long beforeNanos, long afterNanos, long mostBytes) {
        this.folder = folder;
        this.beforeNanos = beforeNanos;
        this.afterNanos = afterNanos;
        this.mostBytes = mostBytes;
    }

    /**
     * Takes what came, once it has been listened to.
     *
     * @param troubles how much had gone wrong by then
     */
    public void take(Arrival.Received received, long troubles) throws IOException {
        held.add(received);
        heldBytes += received.bytes().length();
        while (!held.isEmpty()
                && (held.getFirst().atNanos() < received.atNanos() - beforeNanos || heldBytes > MOST_HELD)) {
            heldBytes -= held.removeFirst().bytes().length();
        }
        if (troubles > knownTroubles) {
            knownTroubles = troubles;
            untilNanos = received.atNanos() + afterNanos;
            begin(received.atNanos());
        }
        if (file != null) {
            writeHeld(file);
            if (received.atNanos() >= untilNanos || isFull) {
                file.close();
                file = null;
            }
        }
    }

    private void begin(long atNanos) throws IOException {
        if (file == null && !isFull) {
            files++;
            file = CaptureFile.create(folder.resolve(
                    String.format(Locale.ROOT, "trouble-%04d-at-%ds.txt", files, atNanos / 1_000_000_000L)));
        }
    }

    private void writeHeld(CaptureFile to) throws IOException {
        while (!held.isEmpty() && !isFull) {
            Arrival.Received next = held.removeFirst();
            heldBytes -= next.bytes().length();
            writtenBytes += LINE_BYTES + 3L * next.bytes().length();
            isFull = writtenBytes > mostBytes;
            to.add(next);
        }
    }

    /** How many captures it made. */
    public int files() {
        return files;
    }

    /** Whether the disk it may use is used up, so that it keeps nothing more. */
    public boolean isFull() {
        return isFull;
    }

    /** Whether a folder can take captures. */
    public static boolean canUse(Path folder) {
        return Files.isDirectory(folder) && Files.isWritable(folder);
    }

    @Override
    public void close() throws IOException {
        if (file != null) {
            file.close();
            file = null;
        }
    }
}
