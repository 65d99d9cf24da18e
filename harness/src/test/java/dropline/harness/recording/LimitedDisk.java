package dropline.harness.recording;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Arrays;

/** A disk with so much room: what does not fit is written as far as it goes, and then it fails. */
public final class LimitedDisk implements JournalFile {
    private final int room;
    private byte[] held = new byte[0];

    public LimitedDisk(int room) {
        this.room = room;
    }

    @Override
    public void append(byte[] bytes, int count) throws IOException {
        int fits = Math.min(count, room - held.length);
        ByteArrayOutputStream grown = new ByteArrayOutputStream();
        grown.writeBytes(held);
        grown.write(bytes, 0, fits);
        held = grown.toByteArray();
        if (fits < count) {
            throw new IOException("No space left on device");
        }
    }

    @Override
    public void cutTo(long length) {
        held = Arrays.copyOf(held, (int) length);
    }

    @Override
    public void force() {}

    @Override
    public void close() {}

    /** What it holds. */
    public byte[] held() {
        return held.clone();
    }
}
