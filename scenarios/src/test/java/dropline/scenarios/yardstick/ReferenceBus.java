package dropline.scenarios.yardstick;

import dropline.bus.chance.Draws;

/** The reference bus with state, as {@code scenarios/reference/bus-with-state.yaml} describes it. */
final class ReferenceBus {
    static final int NODES = 29;
    static final int LAMPS = 58;
    static final long STATE_NANOS = 25_000_000;
    static final int CHANGES = 40;
    static final int VALUES_IN_A_FRAME = 10;
    static final long CHAR_NANOS = 20_000;
    /** A receiver has a character when it samples the stop bit, half a bit before its end. */
    static final long HALF_BIT_NANOS = 1_000;

    static final long REQUEST_NANOS = 8 * CHAR_NANOS;
    static final long CONTROLLER_GAP_NANOS = 50_000;
    private static final long LEAST_GAP_NANOS = 100_000;
    private static final double MEAN_MORE_NANOS = 50_000;
    private static final double SHORT_REPLIES = 0.8;
    private static final int SHORT_CHARS = 8;
    private static final int LONG_CHARS = 14;
    private static final int FRAME_OVERHEAD_CHARS = 6;
    private static final int VALUE_CHARS = 4;

    private final long[] gapStreams = new long[NODES];
    private final long[] lengthStreams = new long[NODES];

    ReferenceBus(long seed) {
        for (int node = 0; node < NODES; node++) {
            long name = Draws.nameHash("node " + (node + 1));
            gapStreams[node] = Draws.stream(seed, name, Draws.Purpose.REPLY_GAP);
            lengthStreams[node] = Draws.stream(seed, name, Draws.Purpose.REPLY_LENGTH);
        }
    }

    /** The reply gap of a node's answer to the segment's poll of this number, from 1. */
    long gapNanos(int node, int poll) {
        double draw = Draws.draw(gapStreams[node], ordinal(poll));
        return LEAST_GAP_NANOS + (long) (-Math.log1p(-draw) * MEAN_MORE_NANOS);
    }

    /** How long that answer takes on the wire. */
    long replyNanos(int node, int poll) {
        boolean isShort = Draws.draw(lengthStreams[node], ordinal(poll)) < SHORT_REPLIES;
        return (isShort ? SHORT_CHARS : LONG_CHARS) * CHAR_NANOS;
    }

    /** How long a frame with so many values takes. */
    static long stateNanos(int values) {
        return (FRAME_OVERHEAD_CHARS + VALUE_CHARS * values) * CHAR_NANOS;
    }

    private static long ordinal(int poll) {
        return poll * 16L + 1;
    }
}
