package dropline.harness.survive;

import dropline.bus.fault.Fault;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.trace.TraceSink;
import dropline.harness.measure.PanelLimit;
import dropline.harness.measure.PanelRecovery;
import dropline.harness.measure.RecoveryMeasure;
import dropline.harness.replay.Sweep;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** One segment under one fault, or under none. Holds its measure only while it runs. */
final class Case implements Sweep.Variant {
    private final Pit pit;
    private final Layout layout;
    private final int segment;
    private final List<Fault> faults;
    private final RecoveryMeasure.Span span;
    private final Map<String, PanelLimit> limits;
    private @Nullable RecoveryMeasure measure;
    private List<PanelRecovery> panels = List.of();

    Case(
            Pit pit,
            Layout layout,
            int segment,
            List<Fault> faults,
            RecoveryMeasure.Span span,
            Map<String, PanelLimit> limits) {
        this.pit = pit;
        this.layout = layout;
        this.segment = segment;
        this.faults = faults;
        this.span = span;
        this.limits = limits;
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
        return faults;
    }

    @Override
    public TraceSink begin() {
        RecoveryMeasure begun = new RecoveryMeasure(pit, layout, segment, span, limits);
        measure = begun;
        return begun;
    }

    @Override
    public void ended() {
        if (measure != null) {
            panels = measure.panels();
            measure = null;
        }
    }

    /** What became of the segment's panels; none before its run. */
    List<PanelRecovery> panels() {
        return panels;
    }
}
