package dropline.harness.recording;

import java.io.EOFException;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;

/** Unpacks gzip; what was cut off simply ends there, with a note of it, and damage is a problem of the recording's. */
final class UnpackingStream extends FilterInputStream {
    private final String name;
    private boolean cut;

    private UnpackingStream(InputStream packed, String name) {
        super(packed);
        this.name = name;
    }

    static UnpackingStream open(InputStream packed, String name) throws IOException {
        try {
            return new UnpackingStream(new GZIPInputStream(packed, 1 << 13), name);
        } catch (EOFException e) {
            throw damaged(name, "it ends inside the gzip header");
        } catch (ZipException e) {
            throw damaged(name, String.valueOf(e.getMessage()));
        }
    }

    /** Whether the packed file ended before its packing did. */
    boolean cut() {
        return cut;
    }

    @Override
    public int read() throws IOException {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
    }

    @Override
    public int read(byte[] into, int offset, int length) throws IOException {
        if (cut) {
            return -1;
        }
        try {
            return super.read(into, offset, length);
        } catch (EOFException e) {
            cut = true;
            return -1;
        } catch (ZipException e) {
            throw damaged(name, String.valueOf(e.getMessage()));
        }
    }

    private static RecordingException damaged(String name, String found) {
        return RecordingProblems.one(RecordingProblems.damagedPacking(name, found));
    }
}
