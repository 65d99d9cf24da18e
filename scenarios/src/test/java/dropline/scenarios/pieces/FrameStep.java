package dropline.scenarios.pieces;

import dropline.bus.host.StateBlock;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.run.SegmentRun;
import dropline.bus.trace.TraceSink;
import dropline.harness.measure.SegmentMeasures;
import dropline.harness.pitfile.PitFile;
import dropline.harness.recording.LoadFeed;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/** A frame of the reference bus with state, without and with measures; the digest is always on. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
public class FrameStep {
    private static final long SECOND = 1_000_000_000L;

    /** Two for every 544 us of the time that state leaves, and 160 that carry it; see the pit file. */
    private static final int FRAMES_A_SECOND = 3_266;

    /** One that runs on and on, a second at a time. */
    private static final class Running {
        private final SegmentRun run;
        private final LoadFeed feed;
        private final StateBlock block = new StateBlock();
        private long reached;

        Running(Pit pit, TraceSink sink) {
            run = new SegmentRun(pit, 0, 1, List.of(), sink);
            feed = new LoadFeed(pit, Objects.requireNonNull(pit.load()));
        }

        long second() {
            reached += SECOND;
            feed.fill(block, reached);
            run.offer(block);
            run.advanceTo(reached);
            return run.digest();
        }
    }

    private final Running alone = running(false);
    private final Running measured = running(true);

    private static Running running(boolean measures) {
        Path file = Path.of(System.getProperty("dropline.home"), "scenarios/reference/bus-with-state.yaml");
        if (!(PitFile.read(file) instanceof PitFile.Understood understood)) {
            throw new IllegalStateException("the reference bus must be right: file=" + file);
        }
        Pit pit = understood.pit();
        return new Running(pit, measures ? new SegmentMeasures(pit, Layout.of(pit), 0) : new TraceSink() {});
    }

    @Benchmark
    @OperationsPerInvocation(FRAMES_A_SECOND)
    public long frame() {
        return alone.second();
    }

    @Benchmark
    @OperationsPerInvocation(FRAMES_A_SECOND)
    public long frameWithAllMeasures() {
        return measured.second();
    }
}
