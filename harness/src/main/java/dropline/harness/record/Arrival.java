package dropline.harness.record;

/** Something that came in: a message, or a word on the connection it comes by. */
final class Arrival {
    /** What it is. */
    enum Kind {
        /** A message whole; its bytes count. */
        MESSAGE,
        /** A message that did not come whole; the text says why. */
        BROKEN,
        /** Something a person should know; the text says what. */
        NOTE,
        /** The connection is lost, for now; the text says so. */
        LOST,
        /** Nothing will come any more; the text says why. */
        END
    }

    private final Kind kind;
    private final long nanos;
    private final byte[] bytes;
    private final String text;

    Arrival(Kind kind, long nanos, byte[] bytes, String text) {
        this.kind = kind;
        this.nanos = nanos;
        this.bytes = bytes;
        this.text = text;
    }

    Kind kind() {
        return kind;
    }

    /** When it came, by a clock that only runs forward, ns. */
    long nanos() {
        return nanos;
    }

    byte[] bytes() {
        return bytes;
    }

    String text() {
        return text;
    }
}
