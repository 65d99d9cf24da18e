package dropline.harness.replay;

import dropline.bus.fault.Fault;
import dropline.bus.host.StateBlock;
import dropline.bus.pit.Pit;
import dropline.bus.run.LaneRun;
import dropline.bus.run.RunawayException;
import dropline.bus.run.SegmentRun;
import dropline.bus.run.StoppedProgramException;
import dropline.bus.trace.TraceSink;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;

/** What runs together, on its way through a replay: one segment, or all those of one board. */
final class Lane {
    private final LaneRun run;

    private Lane(LaneRun run) {
        this.run = run;
    }

    /**
     * The lane of one segment, and of those that run with it.
     *
     * @param faults those that strike none of its segments are left out
     * @param sinks receive the events of each of its segments, by its index in the pit
     */
    static Lane of(Pit pit, int segment, long seed, List<Fault> faults, IntFunction<? extends TraceSink> sinks) {
        try {
            return new Lane(new LaneRun(pit, segment, seed, faults, sinks));
        } catch (StoppedProgramException stopped) {
            throw stopped(stopped);
        }
    }

    private static StoppedRunException stopped(StoppedProgramException program) {
        return new StoppedRunException(
                program.getMessage() + ". What it would do then is not guessed; bench --firmware examines it alone");
    }

    /** The lanes of a whole pit. */
    static List<Lane> all(Pit pit, long seed, List<Fault> faults, IntFunction<? extends TraceSink> sinks) {
        List<Lane> lanes = new ArrayList<>();
        for (int segment = 0; segment < pit.segments().size(); segment++) {
            if (pit.runsWith(segment).get(0) == segment) {
                lanes.add(of(pit, segment, seed, faults, sinks));
            }
        }
        return lanes;
    }

    /** The segments that run in it, as indices into the pit's. */
    List<Integer> segments() {
        return run.segments();
    }

    /** The run of one of them, for those who ask it for bytes or its digest. */
    SegmentRun segment(int index) {
        return run.segment(index);
    }

    /** Steps through a stretch; the block is only read. */
    void step(StateBlock block, long untilNanos) {
        run.offer(block);
        try {
            run.advanceTo(untilNanos);
        } catch (StoppedProgramException program) {
            throw stopped(program);
        } catch (RunawayException runaway) {
            throw new StoppedRunException("the run was stopped at its limit: " + runaway.getMessage()
                    + ". Leave out faults that strike often, or lower their rate; without faults, please report it");
        }
    }

    void end() {
        run.end();
    }
}
