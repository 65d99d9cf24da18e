package dropline.harness.replay;

import dropline.bus.fault.Fault;
import dropline.bus.host.StateBlock;
import dropline.bus.pit.Pit;
import dropline.bus.run.RunawayException;
import dropline.bus.run.SegmentRun;
import dropline.bus.trace.TraceSink;
import java.util.List;

/** One segment on its way through a replay. */
final class Lane {
    private final SegmentRun run;

    private Lane(SegmentRun run) {
        this.run = run;
    }

    /** A segment with those of the faults that strike it or the host. */
    static Lane of(Pit pit, int segment, long seed, List<Fault> faults, TraceSink sink) {
        List<Fault> here = faults.stream()
                .filter(fault -> fault.segment() < 0 || fault.segment() == segment)
                .toList();
        return new Lane(new SegmentRun(pit, segment, seed, here, sink));
    }

    /** The run, for those who ask it for bytes. */
    SegmentRun run() {
        return run;
    }

    /** Steps through a stretch; the block is only read. */
    void step(StateBlock block, long untilNanos) {
        run.offer(block);
        try {
            run.advanceTo(untilNanos);
        } catch (RunawayException runaway) {
            throw new RunLimitException("the run was stopped at its limit: " + runaway.getMessage()
                    + ". Leave out faults that strike often, or lower their rate; without faults, please report it");
        }
    }

    void end() {
        run.end();
    }

    long digest() {
        return run.digest();
    }
}
