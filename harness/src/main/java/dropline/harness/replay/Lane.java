package dropline.harness.replay;

import dropline.bus.host.StateBlock;
import dropline.bus.run.SegmentRun;

/** One segment on its way through a replay. */
final class Lane {
    private final SegmentRun run;

    Lane(SegmentRun run) {
        this.run = run;
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
