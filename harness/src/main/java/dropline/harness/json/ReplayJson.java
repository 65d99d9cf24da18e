package dropline.harness.json;

import dropline.harness.verdict.Advice;
import dropline.harness.verdict.ControlResult;
import dropline.harness.verdict.PanelResult;
import dropline.harness.verdict.ReplayResult;
import dropline.harness.verdict.SegmentResult;
import dropline.harness.verdict.SingleFailure;
import java.io.IOException;
import java.io.Writer;
import tools.jackson.core.JsonGenerator;

/**
 * Writes a result as JSON: keys in a fixed order, times as integers of nanoseconds in keys that end in {@code Nanos},
 * enumerations in small letters. A key added later leaves {@link ReplayResult#VERSION} as it is; one that goes, or
 * changes its meaning, raises it.
 */
public final class ReplayJson {
    private ReplayJson() {}

    /** Writes one document and a line feed, and flushes; does not close. */
    public static void write(ReplayResult result, Writer writer) throws IOException {
        Document.write(writer, json -> document(json, result));
    }

    private static void document(JsonGenerator json, ReplayResult result) {
        json.writeStartObject();
        json.writeNumberProperty("version", result.version());
        json.writeStringProperty("droplineVersion", result.droplineVersion());
        json.writeStringProperty("pit", result.pit());
        json.writeObjectPropertyStart("recording");
        json.writeStringProperty("name", result.recording().name());
        json.writeNumberProperty("durationNanos", result.recording().durationNanos());
        json.writeEndObject();
        json.writeNumberProperty("seed", result.seed());
        json.writeStringProperty("digest", result.digest());
        Parts.faults(json, "faults", result.faults());
        json.writeStringProperty("outcome", Parts.word(result.outcome()));
        Parts.strings(json, "sentences", result.sentences());
        Parts.findings(json, "findings", result.findings());
        json.writeArrayPropertyStart("advice");
        for (Advice advice : result.advice()) {
            json.writeStartObject();
            json.writeStringProperty("about", advice.about());
            json.writeStringProperty("sentence", advice.sentence());
            json.writeEndObject();
        }
        json.writeEndArray();
        Parts.strings(json, "caveats", result.caveats());
        Parts.strings(json, "budgetSources", result.budgetSources());
        Parts.latency(json, "updateLatency", result.updateLatency());
        json.writeArrayPropertyStart("panels");
        for (PanelResult panel : result.panels()) {
            PanelJson.write(json, panel);
        }
        json.writeEndArray();
        json.writeArrayPropertyStart("controls");
        for (ControlResult control : result.controls()) {
            control(json, control);
        }
        json.writeEndArray();
        json.writeArrayPropertyStart("segments");
        for (SegmentResult segment : result.segments()) {
            segment(json, segment);
        }
        json.writeEndArray();
        json.writeArrayPropertyStart("singleFailures");
        for (SingleFailure failure : result.singleFailures()) {
            singleFailure(json, failure);
        }
        json.writeEndArray();
        OriginJson.write(json, result.restsOn());
        json.writeEndObject();
    }

    private static void control(JsonGenerator json, ControlResult control) {
        json.writeStartObject();
        json.writeStringProperty("control", control.control());
        json.writeStringProperty("kind", control.kind());
        json.writeStringProperty("panel", control.panel());
        json.writeStringProperty("segment", control.segment());
        json.writeStringProperty("node", control.node());
        json.writeNumberProperty("moves", control.moves());
        Parts.latency(json, "controlLatency", control.controlLatency());
        Parts.atWorst(json, "atWorst", control.atWorst());
        json.writeNumberProperty("lostSteps", control.lostSteps());
        json.writeNumberProperty("spurious", control.spurious());
        json.writeNumberProperty("budgetNanos", control.budgetNanos());
        json.writeStringProperty("budgetSource", control.budgetSource());
        Parts.verdict(json, "verdict", control.verdict());
        json.writeEndObject();
    }

    private static void segment(JsonGenerator json, SegmentResult segment) {
        json.writeStartObject();
        json.writeStringProperty("segment", segment.segment());
        json.writeNumberProperty("baud", segment.baud());
        json.writeStringProperty("format", segment.format());
        json.writeNumberProperty("nodes", segment.nodes());
        json.writeNumberProperty("utilisation", segment.utilisation());
        Parts.latency(json, "pollCycle", segment.pollCycle());
        Parts.atWorst(json, "pollCycleAtWorst", segment.pollCycleAtWorst());
        json.writeNumberProperty("pollCycleMinNanos", segment.pollCycleMinNanos());
        json.writeArrayPropertyStart("pollCycleOverTime");
        for (SegmentResult.CyclePoint point : segment.pollCycleOverTime()) {
            json.writeStartObject();
            json.writeNumberProperty("atNanos", point.atNanos());
            json.writeNumberProperty("meanNanos", point.meanNanos());
            json.writeNumberProperty("maxNanos", point.maxNanos());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeNumberProperty("asked", segment.asked());
        json.writeNumberProperty("answered", segment.answered());
        json.writeNumberProperty("retried", segment.retried());
        json.writeNumberProperty("timedOut", segment.timedOut());
        json.writeNumberProperty("gaveUp", segment.gaveUp());
        json.writeNumberProperty("backOffs", segment.backOffs());
        json.writeNumberProperty("clashes", segment.clashes());
        json.writeNumberProperty("overruns", segment.overruns());
        json.writeNumberProperty("stateFrames", segment.stateFrames());
        json.writeObjectPropertyStart("replyGap");
        json.writeNumberProperty("minNanos", segment.replyGap().minNanos());
        json.writeNumberProperty("meanNanos", segment.replyGap().meanNanos());
        json.writeNumberProperty("maxNanos", segment.replyGap().maxNanos());
        json.writeEndObject();
        json.writeArrayPropertyStart("nodeGaps");
        for (SegmentResult.NodeGap node : segment.nodeGaps()) {
            json.writeStartObject();
            json.writeStringProperty("node", node.node());
            json.writeNumberProperty("answered", node.answered());
            json.writeNumberProperty("meanNanos", node.meanNanos());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void singleFailure(JsonGenerator json, SingleFailure failure) {
        json.writeStartObject();
        json.writeStringProperty("node", failure.node());
        json.writeStringProperty("segment", failure.segment());
        json.writeStringProperty("outcome", Parts.word(failure.outcome()));
        Parts.strings(json, "silentPanels", failure.silentPanels());
        json.writeNumberProperty("pollCycleMeanNanos", failure.pollCycleMeanNanos());
        json.writeNumberProperty("healthyPollCycleMeanNanos", failure.healthyPollCycleMeanNanos());
        json.writeArrayPropertyStart("panels");
        for (SingleFailure.PanelThen panel : failure.panels()) {
            json.writeStartObject();
            json.writeStringProperty("panel", panel.panel());
            Parts.verdict(json, "verdict", panel.verdict());
            Parts.verdict(json, "healthyVerdict", panel.healthyVerdict());
            Parts.latency(json, "updateLatency", panel.updateLatency());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }
}
