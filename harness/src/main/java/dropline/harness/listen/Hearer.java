package dropline.harness.listen;

import dropline.protocol.Bytes;
import dropline.protocol.Heard;

/** Takes the frames that are heard on a pair, one after the other. */
public interface Hearer {
    /**
     * A sound frame is over.
     *
     * @param startNanos of its first start bit, ns since the first byte that was heard
     * @param endNanos of its last stop bit, ns
     * @param bytes as they stood on the wire
     */
    void frame(Heard frame, long startNanos, long endNanos, Bytes bytes);

    /** Nothing more comes. */
    default void ended(long atNanos) {}
}
