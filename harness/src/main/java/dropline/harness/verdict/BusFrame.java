package dropline.harness.verdict;

/**
 * A frame on the wire, for drawing who talked when.
 *
 * @param talker the node's name, or {@code controller}
 * @param kind what it was for
 * @param node name of the node polled or replying; {@code all} for a broadcast
 * @param transaction the segment's transaction or broadcast it belongs to
 * @param startNanos first start bit, ns into the recording
 * @param endNanos end of the last stop bit, ns into the recording
 * @param clashed whether another transmission touched it
 */
public record BusFrame(
        String talker, Kind kind, String node, int transaction, long startNanos, long endNanos, boolean clashed) {

    /** What a frame is for. */
    public enum Kind {
        REQUEST,
        REPLY,
        BROADCAST
    }

    public BusFrame {
        if (endNanos < startNanos) {
            throw new IllegalArgumentException(
                    "a frame must end after its start: startNanos=" + startNanos + " endNanos=" + endNanos);
        }
    }
}
