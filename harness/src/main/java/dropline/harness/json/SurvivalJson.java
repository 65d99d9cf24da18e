package dropline.harness.json;

import dropline.harness.survive.FaultOutcome;
import dropline.harness.survive.PanelOutcome;
import dropline.harness.survive.Survival;
import java.io.IOException;
import java.io.Writer;
import tools.jackson.core.JsonGenerator;

/**
 * Writes the whole matrix of panels by faults as JSON, in the manner of {@link ReplayJson}; described in
 * {@code docs/survive-json.md}.
 */
public final class SurvivalJson {
    private SurvivalJson() {}

    /** Writes one document and a line feed, and flushes; does not close. */
    public static void write(Survival survival, Writer writer) throws IOException {
        Document.write(writer, json -> document(json, survival));
    }

    private static void document(JsonGenerator json, Survival survival) {
        json.writeStartObject();
        json.writeNumberProperty("version", survival.version());
        json.writeStringProperty("droplineVersion", survival.droplineVersion());
        json.writeStringProperty("pit", survival.pit());
        json.writeObjectPropertyStart("recording");
        json.writeStringProperty("name", survival.recording().name());
        json.writeNumberProperty("durationNanos", survival.recording().durationNanos());
        json.writeEndObject();
        json.writeNumberProperty("seed", survival.seed());
        json.writeNumberProperty("atNanos", survival.atNanos());
        json.writeNumberProperty("forNanos", survival.forNanos());
        json.writeBooleanProperty("survives", survival.survives());
        json.writeArrayPropertyStart("allowed");
        for (Survival.Allowed panel : survival.panels()) {
            json.writeStartObject();
            json.writeStringProperty("panel", panel.panel());
            json.writeStringProperty("segment", panel.segment());
            json.writeNumberProperty("updateBudgetNanos", panel.updateBudgetNanos());
            json.writeNumberProperty("updateLimitNanos", panel.updateLimitNanos());
            json.writeNumberProperty("controlLimitNanos", panel.controlLimitNanos());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayPropertyStart("outcomes");
        survival.faults().forEach(fault -> outcome(json, fault));
        json.writeEndArray();
        Parts.strings(json, "losses", survival.losses());
        json.writeEndObject();
    }

    private static void outcome(JsonGenerator json, FaultOutcome outcome) {
        json.writeStartObject();
        json.writeName("fault");
        Parts.fault(json, outcome.fault());
        json.writeStringProperty("state", Parts.word(outcome.state()));
        json.writeArrayPropertyStart("panels");
        for (PanelOutcome panel : outcome.panels()) {
            json.writeStartObject();
            json.writeStringProperty("panel", panel.panel());
            json.writeStringProperty("node", panel.node());
            json.writeStringProperty("state", Parts.word(panel.state()));
            json.writeNumberProperty("worstUpdateNanos", panel.worstUpdateNanos());
            json.writeNumberProperty("worstControlNanos", panel.worstControlNanos());
            json.writeNumberProperty("recoveryNanos", panel.recoveryNanos());
            json.writeStringProperty("lack", panel.lack());
            json.writeBooleanProperty("stoodWrong", panel.stoodWrong());
            json.writeNumberProperty("lostSteps", panel.lostSteps());
            json.writeNumberProperty("spurious", panel.spurious());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }
}
