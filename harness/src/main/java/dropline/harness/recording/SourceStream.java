package dropline.harness.recording;

import java.io.BufferedInputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * A recording's bytes, unpacked if they were gzip. A packed file that was cut ends where it was cut, and that is noted.
 */
final class SourceStream extends FilterInputStream {
    private static final int LOOK = 4096;

    private final String name;
    private final CountingStream file;
    private final long bytesTotal;
    private final @Nullable UnpackingStream unpacking;

    private SourceStream(
            InputStream in, CountingStream file, @Nullable UnpackingStream unpacking, String name, long bytesTotal) {
        super(in);
        this.file = file;
        this.unpacking = unpacking;
        this.name = name;
        this.bytesTotal = bytesTotal;
    }

    static SourceStream open(Path path) throws IOException {
        String name = path.toString();
        CountingStream file = new CountingStream(Files.newInputStream(path));
        try {
            BufferedInputStream plain = new BufferedInputStream(file, 1 << 14);
            byte[] first = look(plain, 2);
            if (first.length == 0) {
                throw RecordingProblems.one(RecordingProblems.emptyFile(name));
            }
            boolean gzip = first.length == 2 && (first[0] & 0xFF) == 0x1F && (first[1] & 0xFF) == 0x8B;
            UnpackingStream unpacking = gzip ? UnpackingStream.open(plain, name) : null;
            InputStream in = unpacking == null ? plain : new BufferedInputStream(unpacking, 1 << 14);
            return new SourceStream(in, file, unpacking, name, Files.size(path));
        } catch (IOException | RuntimeException e) {
            file.close();
            throw e;
        }
    }

    /** The file as the person named it. */
    String name() {
        return name;
    }

    boolean isPacked() {
        return unpacking != null;
    }

    /** Whether the packed file ended before its packing did. */
    boolean cut() {
        return unpacking != null && unpacking.cut();
    }

    long bytesRead() {
        return file.count();
    }

    long bytesTotal() {
        return bytesTotal;
    }

    boolean beginsWithMagic() throws IOException {
        byte[] first = peek(CompactFormat.MAGIC_LENGTH);
        int same = 0;
        while (same < first.length && (first[same] & 0xFF) == CompactFormat.magic(same)) {
            same++;
        }
        return same == CompactFormat.MAGIC_LENGTH || (same > 0 && same == first.length);
    }

    /** The first bytes, without taking them; fewer if there are no more. */
    byte[] peek(int count) throws IOException {
        mark(LOOK);
        byte[] first = readNBytes(Math.min(count, LOOK));
        reset();
        return first;
    }

    private static byte[] look(InputStream in, int count) throws IOException {
        in.mark(LOOK);
        byte[] first = in.readNBytes(count);
        in.reset();
        return first;
    }
}
