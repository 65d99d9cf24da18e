package dropline.harness.capture;

import java.io.Closeable;
import java.io.IOException;
import java.util.List;

/** Takes what was captured and makes something of it. */
public interface CaptureSink extends Closeable {
    /**
     * Takes what a segment had on the pair; each segment's come in order.
     *
     * @param segment index of the segment
     * @param frames complete
     * @param drivers their changes
     */
    void take(int segment, List<SentFrame> frames, List<DriverChange> drivers);

    /** Nothing before this instant will come any more, from no segment. */
    void reached(long horizonNanos) throws IOException;
}
