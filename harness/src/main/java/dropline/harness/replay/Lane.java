package dropline.harness.replay;

import dropline.bus.fault.Fault;
import dropline.bus.host.StateBlock;
import dropline.bus.pit.Pit;
import dropline.bus.run.SegmentRun;
import dropline.bus.trace.TraceSink;
import java.util.List;

/** One segment on its way through a replay. */
final class Lane {
    private final SegmentRun run;

    private Lane(SegmentRun run) {
        this.run = run;
    }

    /** A segment with those of the faults that strike it or the host, stopped at the limit. */
    static Lane of(Pit pit, int segment, long seed, List<Fault> faults, TraceSink sink, RunLimit limit) {
        List<Fault> here = faults.stream()
                .filter(fault -> fault.segment() < 0 || fault.segment() == segment)
                .toList();
        EventGuard guard = new EventGuard(pit.segments().get(segment).name(), limit);
        return new Lane(new SegmentRun(pit, segment, seed, here, new Both(guard, sink)));
    }

    /** The segment's run. */
    SegmentRun run() {
        return run;
    }

    /** Steps through a stretch; the block is only read. */
    void step(StateBlock block, long untilNanos) {
        run.offer(block);
        run.advanceTo(untilNanos);
    }

    void end() {
        run.end();
    }

    long digest() {
        return run.digest();
    }
}
