package dropline.harness.verdict;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.trace.TraceSink;
import dropline.harness.measure.BusMeasure;
import dropline.harness.measure.ControlMeasure;
import dropline.harness.measure.FrameCopy;
import dropline.harness.measure.PanelMeasure;
import dropline.harness.measure.SegmentMeasures;
import dropline.harness.measure.SlotMeasure;
import dropline.harness.measure.Times;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Judges panels and controls on their longest latency, and puts their figures together. */
final class Judge {
    private final Pit pit;
    private final Layout layout;
    private final AtWorsts atWorsts;
    private final String uncertainty;

    /** {@code atWorsts}: the bounds that stand beside what was measured. */
    Judge(Pit pit, Layout layout, long seed, AtWorsts atWorsts) {
        this.atWorsts = atWorsts;
        this.pit = pit;
        this.layout = layout;
        uncertainty = "exact for this run with seed " + seed + "; another seed or recording may find a slower one";
    }

    PanelResult panel(PanelMeasure measure) {
        Panel panel = measure.panel();
        List<SlotMeasure> slots = measure.slots();
        Times times = new Times();
        List<SignalResult> signals = new ArrayList<>();
        long lost = 0;
        long open = 0;
        for (SlotMeasure slot : slots) {
            times.addAll(slot.latency());
            signals.add(Figures.signal(slot));
            lost += slot.lost();
            open = Math.max(open, slot.openNanos());
        }
        Layout.NodePlace place = layout.nodes().get(measure.node());
        return new PanelResult(
                panel.name(),
                panel.place(),
                pit.segments().get(place.segment()).name(),
                place.node().name(),
                Words.of(panel.status()),
                panel.budget().updateNanos(),
                panel.budget().source(),
                verdict(
                        "update latency",
                        "change",
                        times,
                        open,
                        lost,
                        panel.budget().updateNanos()),
                Figures.latency(times),
                atWorsts.panel(measure),
                Figures.meanStages(slots),
                worst(measure),
                Figures.histogram(times),
                measure.recoveryNanos(),
                measure.staleNanos(),
                signals);
    }

    ControlResult control(ControlMeasure measure) {
        Layout.ControlPlace place = measure.place();
        Layout.NodePlace node = layout.nodes().get(place.node());
        long limit = place.panel().budget().controlNanos();
        return new ControlResult(
                place.control().name(),
                Words.of(place.control().kind()),
                place.panel().name(),
                pit.segments().get(place.segment()).name(),
                node.node().name(),
                measure.moves(),
                Figures.latency(measure.latency()),
                atWorsts.control(measure),
                measure.lostSteps(),
                measure.spurious(),
                limit,
                place.panel().budget().source(),
                verdict("control latency", "move", measure.latency(), measure.openNanos(), measure.lostSteps(), limit));
    }

    /** What waited at the end counts as having taken that long at least. */
    private Verdict verdict(String rule, String thing, Times times, long openNanos, long lost, long limitNanos) {
        long value = Math.max(times.maxNanos(), openNanos);
        if (lost > 0 || value > limitNanos) {
            String evidence = openNanos > times.maxNanos() || lost > 0
                    ? Words.count(lost, thing) + " lost, the oldest waiting for " + Words.time(openNanos)
                            + " at the end"
                    : "slowest of " + Words.count(times.count(), thing);
            return new Verdict(Outcome.FAIL, rule, value, limitNanos, uncertainty, evidence);
        }
        if (times.count() == 0) {
            return new Verdict(
                    Outcome.UNDECIDED, rule, 0, limitNanos, "nothing to judge", "no " + thing + " in this run");
        }
        return new Verdict(
                Outcome.PASS, rule, value, limitNanos, uncertainty, "slowest of " + Words.count(times.count(), thing));
    }

    private @Nullable WorstMoment worst(PanelMeasure measure) {
        SlotMeasure slot = measure.slowest();
        FrameCopy copy = measure.frames();
        if (slot == null || copy == null) {
            return null;
        }
        long[] stages = new long[SlotMeasure.STAGES];
        for (int stage = 0; stage < stages.length; stage++) {
            stages[stage] = measure.cutNanos(stage + 1) - measure.cutNanos(stage);
        }
        long shown = measure.cutNanos(SlotMeasure.STAGES);
        return new WorstMoment(
                slot.slot().indicator().name(),
                slot.signal().name(),
                measure.cutNanos(0),
                shown,
                Figures.stages(stages),
                measure.timesCarried(),
                measure.timeOuts(),
                measure.clashes(),
                measure.overruns(),
                measure.fromNanos(),
                shown,
                frames(copy));
    }

    private List<BusFrame> frames(FrameCopy copy) {
        List<BusFrame> frames = new ArrayList<>();
        for (int i = 0; i < copy.count(); i++) {
            frames.add(new BusFrame(
                    nodeName(copy.talker(i), "controller"),
                    kind(copy.kind(i)),
                    nodeName(copy.node(i), "all"),
                    copy.transaction(i),
                    copy.startNanos(i),
                    copy.endNanos(i),
                    copy.clashed(i)));
        }
        return frames;
    }

    private String nodeName(int node, String none) {
        return node < 0 ? none : layout.nodes().get(node).node().name();
    }

    private static BusFrame.Kind kind(int frame) {
        if (frame == TraceSink.REQUEST) {
            return BusFrame.Kind.REQUEST;
        }
        return frame == TraceSink.REPLY ? BusFrame.Kind.REPLY : BusFrame.Kind.BROADCAST;
    }

    SegmentResult segment(SegmentMeasures measures) {
        Segment segment = pit.segments().get(measures.segment());
        BusMeasure bus = measures.bus();
        return new SegmentResult(
                segment.name(),
                segment.baud(),
                segment.format().toString(),
                segment.nodes().size(),
                bus.utilisation(),
                Figures.latency(bus.cycles()),
                atWorsts.cycle(measures.segment()),
                bus.cycles().minNanos(),
                Figures.cyclePoints(bus),
                bus.asked(),
                bus.answered(),
                bus.retried(),
                bus.timedOut(),
                bus.gaveUp(),
                bus.backOffs(),
                bus.clashes(),
                bus.overruns(),
                bus.stateFrames(),
                new SegmentResult.ReplyGap(bus.gapMinNanos(), bus.gapMeanNanos(), bus.gapMaxNanos()),
                nodeGaps(measures.segment(), bus));
    }

    private List<SegmentResult.NodeGap> nodeGaps(int segment, BusMeasure bus) {
        List<SegmentResult.NodeGap> gaps = new ArrayList<>();
        for (int n = 0; n < layout.nodes().size(); n++) {
            if (layout.nodes().get(n).segment() == segment) {
                String name = layout.nodes().get(n).node().name();
                gaps.add(new SegmentResult.NodeGap(name, bus.answered(n), bus.gapMeanNanos(n)));
            }
        }
        return gaps;
    }
}
