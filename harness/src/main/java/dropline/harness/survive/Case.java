package dropline.harness.survive;

import dropline.bus.fault.Fault;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.trace.TraceSink;
import dropline.harness.measure.PanelLimit;
import dropline.harness.measure.PanelRecovery;
import dropline.harness.measure.RecoveryMeasure;
import dropline.harness.replay.Sweep;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** A segment, with those that run with it, under one fault or none. Holds its measures only while it runs. */
final class Case implements Sweep.Variant {
    private final Pit pit;
    private final Layout layout;
    private final int segment;
    private final List<Fault> faults;
    private final RecoveryMeasure.Span span;
    private final Map<String, PanelLimit> limits;
    private final List<RecoveryMeasure> measures = new ArrayList<>();
    private final List<PanelRecovery> panels = new ArrayList<>();

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
    public TraceSink begin(int begun) {
        RecoveryMeasure measure = new RecoveryMeasure(pit, layout, begun, span, limits);
        measures.add(measure);
        return measure;
    }

    @Override
    public void ended() {
        measures.forEach(measure -> panels.addAll(measure.panels()));
        measures.clear();
    }

    /** What became of the panels; none before its run. */
    List<PanelRecovery> panels() {
        return panels;
    }
}
