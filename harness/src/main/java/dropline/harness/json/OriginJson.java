package dropline.harness.json;

import dropline.harness.verdict.RestsOn;
import dropline.harness.verdict.Strain;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JsonGenerator;

/** Writes what a result rests on: {@code restsOn}. */
final class OriginJson {
    private OriginJson() {}

    static void write(JsonGenerator json, RestsOn restsOn) {
        json.writeObjectPropertyStart("restsOn");
        json.writeNumberProperty("measured", restsOn.measured());
        json.writeNumberProperty("preset", restsOn.preset());
        json.writeNumberProperty("guessed", restsOn.guessed());
        json.writeNumberProperty("unstated", restsOn.unstated());
        Parts.strings(json, "sentences", restsOn.sentences());
        RestsOn.Tried tried = restsOn.tried();
        if (tried != null) {
            tried(json, tried);
        }
        json.writeEndObject();
    }

    private static void tried(JsonGenerator json, RestsOn.Tried tried) {
        json.writeObjectPropertyStart("tried");
        json.writeNumberProperty("figures", tried.figures());
        json.writeNumberProperty("fromNanos", tried.fromNanos());
        json.writeNumberProperty("untilNanos", tried.untilNanos());
        json.writeNumberProperty("idle", tried.idle());
        Parts.strings(json, "refused", tried.refused());
        json.writeNumberProperty("left", tried.left());
        RestsOn.Next next = tried.next();
        if (next != null) {
            json.writeObjectPropertyStart("next");
            json.writeStringProperty("figure", next.figure());
            json.writeStringProperty("written", next.written());
            json.writeStringProperty("where", next.where());
            json.writeStringProperty("segment", next.segment());
            strain(json, "asWritten", next.asWritten());
            strain(json, "half", next.half());
            strain(json, "double", next.twice());
            json.writeEndObject();
        }
        json.writeEndObject();
    }

    private static void strain(JsonGenerator json, String key, @Nullable Strain strain) {
        if (strain != null) {
            json.writeObjectPropertyStart(key);
            json.writeNumberProperty("failing", strain.failing());
            json.writeNumberProperty("share", strain.share());
            json.writeStringProperty("tightest", strain.tightest());
            json.writeEndObject();
        }
    }
}
