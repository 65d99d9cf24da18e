package dropline.protocol.custom;

/** A place among received bytes, moved on by whoever reads there; once failed it stays so. */
final class Cursor {
    private final byte[] bytes;
    private final int end;
    private int at;
    private boolean failed;

    Cursor(byte[] bytes, int at, int end) {
        this.bytes = bytes;
        this.at = at;
        this.end = end;
    }

    int at() {
        return at;
    }

    boolean failed() {
        return failed;
    }

    void fail() {
        failed = true;
    }

    /** The byte here, 0..255, or -1 at the end. */
    int peek() {
        return at < end ? bytes[at] & 0xFF : -1;
    }

    /** The byte here, stepped over; at the end it fails and gives 0. */
    int next() {
        if (at >= end) {
            fail();
            return 0;
        }
        return bytes[at++] & 0xFF;
    }

    /** Steps over so many bytes, or fails where there are fewer. */
    void skip(int count) {
        failed |= end - at < count;
        at = Math.min(end, at + count);
    }
}
