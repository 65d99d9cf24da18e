package dropline.scenarios.pieces;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.trace.TraceSink;
import dropline.harness.measure.SegmentMeasures;
import dropline.harness.pitfile.PitFile;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/** The measures alone: one change of one lamp on its way from the host to being shown. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
public class Updates {
    private static final long EVERY_NANOS = 25_000_000;
    private static final long QUEUED = 10_000;
    private static final long CARRIED = 1_000_000;
    private static final long HEARD = 2_000_000;

    private final SegmentMeasures measures = measures();
    private long now;
    private int serial;

    private static SegmentMeasures measures() {
        Path file = Path.of(System.getProperty("dropline.home"), "scenarios/reference/bus-with-state.yaml");
        if (!(PitFile.read(file) instanceof PitFile.Understood understood)) {
            throw new IllegalStateException("the reference bus must be right: file=" + file);
        }
        Pit pit = understood.pit();
        return new SegmentMeasures(pit, Layout.of(pit), 0);
    }

    @Benchmark
    public SegmentMeasures updateMeasured() {
        now += EVERY_NANOS;
        serial++;
        measures.stateChanged(now, 0, serial, serial & 1);
        measures.stateSent(now);
        measures.queued(now + QUEUED, TraceSink.ALL, 0, serial);
        measures.carried(now + CARRIED, TraceSink.ALL, 0, serial, serial);
        measures.applied(now + HEARD, 0, serial, now + HEARD);
        measures.shown(now + HEARD, 0, serial);
        return measures;
    }
}
