package dropline.harness.origin;

import dropline.bus.fault.Fault;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.trace.TraceSink;
import dropline.harness.measure.SegmentMeasures;
import dropline.harness.replay.Sweep;
import dropline.harness.verdict.Strain;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One segment of a pit over a stretch, as written or with one guess scaled; others that run with it are not measured.
 * Holds its measure only while it runs.
 */
final class Trial implements Sweep.Variant {
    private static final TraceSink UNHEARD = new TraceSink() {};

    private final Pit pit;
    private final int segment;
    private @Nullable SegmentMeasures measure;
    private Strain strain = new Strain(0, 0, "");

    Trial(Pit pit, int segment) {
        this.pit = pit;
        this.segment = segment;
    }

    @Override
    public Pit pit() {
        return pit;
    }

    @Override
    public int segment() {
        return segment;
    }

    @Override
    public List<Fault> faults() {
        return List.of();
    }

    @Override
    public TraceSink begin(int begun) {
        if (begun != segment) {
            return UNHEARD;
        }
        SegmentMeasures measured = new SegmentMeasures(pit, Layout.of(pit), segment);
        measure = measured;
        return measured;
    }

    @Override
    public void ended() {
        if (measure != null) {
            strain = Strain.of(measure);
            measure = null;
        }
    }

    /** How the segment fared; nothing before its run. */
    Strain strain() {
        return strain;
    }
}
