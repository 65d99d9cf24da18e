package dropline.harness.json;

import dropline.harness.describe.ColumnSummary;
import dropline.harness.describe.RecordingSummary;
import dropline.harness.describe.RecordingSummary.ControlSummary;
import dropline.harness.describe.RecordingSummary.Pause;
import java.io.IOException;
import java.io.Writer;
import tools.jackson.core.JsonGenerator;

/**
 * Writes what a recording shows as JSON, in the manner of {@link ReplayJson}; described in
 * {@code docs/recording-format.md}.
 */
public final class RecordingJson {
    private static final int VERSION = 1;

    private RecordingJson() {}

    /** Writes one document and a line feed, and flushes; does not close. */
    public static void write(RecordingSummary summary, Writer writer) throws IOException {
        Document.write(writer, json -> document(json, summary));
    }

    private static void document(JsonGenerator json, RecordingSummary summary) {
        json.writeStartObject();
        json.writeNumberProperty("version", VERSION);
        json.writeStringProperty("file", summary.file());
        json.writeNumberProperty("firstNanos", summary.firstNanos());
        json.writeNumberProperty("lastNanos", summary.lastNanos());
        json.writeStringProperty("timeUnit", summary.unit());
        json.writeNumberProperty("states", summary.states());
        json.writeNumberProperty("periodNanos", summary.periodNanos());
        json.writeNumberProperty("pauses", summary.pauses());
        json.writeArrayPropertyStart("longestPauses");
        for (Pause pause : summary.longest()) {
            json.writeStartObject();
            json.writeNumberProperty("atNanos", pause.atNanos());
            json.writeNumberProperty("lastsNanos", pause.lastsNanos());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayPropertyStart("columns");
        summary.columns().forEach(column -> column(json, column));
        json.writeEndArray();
        json.writeArrayPropertyStart("controls");
        summary.controls().forEach(control -> control(json, control));
        json.writeEndArray();
        json.writeNumberProperty("skippedRows", summary.skippedRows());
        Parts.strings(json, "losses", summary.losses());
        json.writeEndObject();
    }

    private static void column(JsonGenerator json, ColumnSummary column) {
        json.writeStartObject();
        json.writeStringProperty("name", column.name());
        json.writeStringProperty("looksLike", Parts.word(column.kind()));
        json.writeBooleanProperty("wraps", column.wraps());
        json.writeStringProperty("unit", column.unit());
        known(json, "least", column.least());
        known(json, "greatest", column.greatest());
        json.writeNumberProperty("changes", column.changes());
        json.writeNumberProperty("changesPerSecond", column.perSecond());
        json.writeNumberProperty("largestJump", column.largestJump());
        json.writeNumberProperty("smallestStep", column.smallestStep());
        json.writeEndObject();
    }

    private static void known(JsonGenerator json, String key, double value) {
        if (Double.isNaN(value)) {
            json.writeNullProperty(key);
        } else {
            json.writeNumberProperty(key, value);
        }
    }

    private static void control(JsonGenerator json, ControlSummary control) {
        json.writeStartObject();
        json.writeStringProperty("name", control.name());
        json.writeNumberProperty("moves", control.moves());
        json.writeNumberProperty("least", control.least());
        json.writeNumberProperty("greatest", control.greatest());
        json.writeEndObject();
    }
}
