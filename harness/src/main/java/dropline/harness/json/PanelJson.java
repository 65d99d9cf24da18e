package dropline.harness.json;

import dropline.harness.verdict.BusFrame;
import dropline.harness.verdict.Latency;
import dropline.harness.verdict.LatencyHistogram;
import dropline.harness.verdict.PanelResult;
import dropline.harness.verdict.SignalResult;
import dropline.harness.verdict.WorstMoment;
import tools.jackson.core.JsonGenerator;

/** A panel in the document. */
final class PanelJson {
    private PanelJson() {}

    static void write(JsonGenerator json, PanelResult panel) {
        json.writeStartObject();
        json.writeStringProperty("panel", panel.panel());
        json.writeStringProperty("place", panel.place());
        json.writeStringProperty("segment", panel.segment());
        json.writeStringProperty("node", panel.node());
        json.writeStringProperty("status", panel.status());
        json.writeNumberProperty("budgetNanos", panel.budgetNanos());
        json.writeStringProperty("budgetSource", panel.budgetSource());
        Parts.verdict(json, "verdict", panel.verdict());
        Parts.latency(json, "updateLatency", panel.updateLatency());
        Parts.atWorst(json, "atWorst", panel.atWorst());
        Parts.stages(json, "meanStages", panel.meanStages());
        WorstMoment moment = panel.worst();
        if (moment == null) {
            json.writeNullProperty("worst");
        } else {
            worst(json, moment);
        }
        json.writeArrayPropertyStart("histogram");
        for (LatencyHistogram.Bucket bucket : panel.histogram().buckets()) {
            json.writeStartObject();
            json.writeNumberProperty("fromNanos", bucket.fromNanos());
            json.writeNumberProperty("untilNanos", bucket.untilNanos());
            json.writeNumberProperty("count", bucket.count());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeNumberProperty("recoveryNanos", panel.recoveryNanos());
        json.writeNumberProperty("staleNanos", panel.staleNanos());
        json.writeArrayPropertyStart("signals");
        for (SignalResult signal : panel.signals()) {
            signal(json, signal);
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void worst(JsonGenerator json, WorstMoment worst) {
        json.writeObjectPropertyStart("worst");
        json.writeStringProperty("indicator", worst.indicator());
        json.writeStringProperty("signal", worst.signal());
        json.writeNumberProperty("changedNanos", worst.changedNanos());
        json.writeNumberProperty("shownNanos", worst.shownNanos());
        json.writeNumberProperty("latencyNanos", worst.latencyNanos());
        Parts.stages(json, "stages", worst.stages());
        json.writeNumberProperty("timesCarried", worst.timesCarried());
        json.writeNumberProperty("timeOuts", worst.timeOuts());
        json.writeNumberProperty("clashes", worst.clashes());
        json.writeNumberProperty("overruns", worst.overruns());
        json.writeNumberProperty("fromNanos", worst.fromNanos());
        json.writeNumberProperty("untilNanos", worst.untilNanos());
        json.writeArrayPropertyStart("frames");
        for (BusFrame frame : worst.frames()) {
            json.writeStartObject();
            json.writeStringProperty("talker", frame.talker());
            json.writeStringProperty("kind", Parts.word(frame.kind()));
            json.writeStringProperty("node", frame.node());
            json.writeNumberProperty("transaction", frame.transaction());
            json.writeNumberProperty("startNanos", frame.startNanos());
            json.writeNumberProperty("endNanos", frame.endNanos());
            json.writeBooleanProperty("clashed", frame.clashed());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void signal(JsonGenerator json, SignalResult signal) {
        json.writeStartObject();
        json.writeStringProperty("indicator", signal.indicator());
        json.writeStringProperty("indicatorKind", signal.indicatorKind());
        json.writeStringProperty("signal", signal.signal());
        json.writeStringProperty("unit", signal.unit());
        json.writeNumberProperty("changes", signal.changes());
        json.writeNumberProperty("initial", signal.initial());
        Parts.latency(json, "updateLatency", signal.updateLatency());
        Parts.latency(json, "ownDelay", signal.ownDelay());
        Parts.stages(json, "meanStages", signal.meanStages());
        Parts.stages(json, "worstStages", signal.worstStages());
        json.writeNumberProperty("ageMeanNanos", signal.ageMeanNanos());
        json.writeNumberProperty("agePeakNanos", signal.agePeakNanos());
        json.writeNumberProperty("displayErrorMax", signal.displayErrorMax());
        json.writeNumberProperty("displayErrorRms", signal.displayErrorRms());
        Latency settling = signal.settling();
        if (settling == null) {
            json.writeNullProperty("settling");
        } else {
            Parts.latency(json, "settling", settling);
        }
        json.writeNumberProperty("coalesced", signal.coalesced());
        json.writeNumberProperty("missed", signal.missed());
        json.writeNumberProperty("lost", signal.lost());
        json.writeEndObject();
    }
}
