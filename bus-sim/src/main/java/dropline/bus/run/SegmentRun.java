package dropline.bus.run;

import dropline.bus.host.StateBlock;
import dropline.bus.pit.Pit;
import dropline.bus.trace.TraceSink;

/**
 * One segment, running. Segments share nothing, so each may be stepped on a thread of its own. For each stretch of time:
 * {@link #offer} the block of state that covers it, then {@link #advanceTo} its end; the block may be reused after that.
 */
public final class SegmentRun {

    /**
     * @param pit the description
     * @param segment index into {@link Pit#segments()}
     * @param seed the run's seed; the same seed gives the same trace
     * @param deadNode index into {@link dropline.bus.pit.Layout#nodes()} of a node that is unplugged, or -1
     * @param sink receives the segment's events in order
     */
    public SegmentRun(Pit pit, int segment, long seed, int deadNode, TraceSink sink) {}

    /** Gives the segment the state for the next stretch; everything in it lies at or after the last {@code advanceTo}. */
    public void offer(StateBlock block) {}

    /** Runs until {@code toNanos}: every event before it is decided and, as far as order allows, handed to the sink. */
    public void advanceTo(long toNanos) {}

    /** Hands over what was held back, and ends the trace at the instant reached. */
    public void end() {}

    /** The digest of the segment's trace so far: a 64-bit mix over every event's integers. */
    public long digest() {
        return 0;
    }
}
