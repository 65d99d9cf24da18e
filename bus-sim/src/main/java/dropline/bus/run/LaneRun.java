package dropline.bus.run;

import dropline.bus.controller.BoardLoop;
import dropline.bus.controller.UsbPipe;
import dropline.bus.fault.Fault;
import dropline.bus.host.StateBlock;
import dropline.bus.pit.Pit;
import dropline.bus.trace.TraceSink;
import java.util.List;
import java.util.function.IntFunction;

/**
 * What runs together: one segment, or all segments of one board, which share its program and its USB lead. Several are
 * taken through time in step, always the one whose next event is due first, and of equals the first in the pit, so that
 * what they do to one another does not depend on threads. Lanes share nothing.
 */
public final class LaneRun {
    private final List<Integer> indices;
    private final SegmentRun[] segments;
    private final long[] next;

    /**
     * @param pit the description
     * @param segment index of one of the segments that run in this lane
     * @param seed the run's
     * @param faults what goes wrong; those of other segments are left out
     * @param sinks receive the events of each segment, by its index
     */
    public LaneRun(Pit pit, int segment, long seed, List<Fault> faults, IntFunction<? extends TraceSink> sinks) {
        indices = pit.runsWith(segment);
        segments = new SegmentRun[indices.size()];
        next = new long[segments.length];
        UsbPipe pipe = new UsbPipe(pit.segments().get(segment).controller().adapter(), indices, faults);
        BoardLoop loop = new BoardLoop(pit.turnNanos(segment));
        for (int i = 0; i < segments.length; i++) {
            int index = indices.get(i);
            List<Fault> here = faults.stream()
                    .filter(fault -> fault.segment() < 0 || fault.segment() == index)
                    .toList();
            segments[i] = new SegmentRun(pit, index, seed, here, sinks.apply(index), pipe, loop, false);
        }
    }

    /** The segments that run in it, as indices into {@link Pit#segments()}, ascending. */
    public List<Integer> segments() {
        return indices;
    }

    /** One of its segments, for those who ask it for bytes or its digest. */
    public SegmentRun segment(int index) {
        return segments[indices.indexOf(index)];
    }

    /** Gives its segments the state for the next stretch. */
    public void offer(StateBlock block) {
        for (SegmentRun segment : segments) {
            segment.offer(block);
        }
    }

    /**
     * Runs until {@code toNanos}: every event before it is decided and handed to the sinks.
     *
     * @throws RunawayException if that would take more steps than any pair could carry
     */
    public void advanceTo(long toNanos) {
        if (segments.length == 1) {
            segments[0].advanceTo(toNanos);
        } else {
            advanceInStep(toNanos);
        }
    }

    private void advanceInStep(long toNanos) {
        for (int i = 0; i < segments.length; i++) {
            segments[i].allow(toNanos);
            next[i] = segments[i].lookAhead(toNanos);
        }
        int due = due();
        while (next[due] < toNanos) {
            segments[due].step(next[due]);
            next[due] = segments[due].lookAhead(toNanos);
            due = due();
        }
        for (SegmentRun segment : segments) {
            segment.arrive(toNanos);
        }
    }

    private int due() {
        int due = 0;
        for (int i = 1; i < next.length; i++) {
            if (next[i] < next[due]) {
                due = i;
            }
        }
        return due;
    }

    /** Ends the traces at the instant reached; what would have happened later is dropped. */
    public void end() {
        for (SegmentRun segment : segments) {
            segment.end();
        }
    }
}
