package dropline.harness.json;

import dropline.harness.verdict.RestsOn;
import dropline.harness.verdict.Strain;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JsonGenerator;

/** Writes what a result rests on: {@code restsOn}. */
final class OriginJson {
    private OriginJson() {}

    static void write(JsonGenerator json, @Nullable RestsOn restsOn) {
        if (restsOn == null) {
            json.writeNullProperty("restsOn");
            return;
        }
        json.writeObjectPropertyStart("restsOn");
        json.writeNumberProperty("measured", restsOn.measured());
        json.writeNumberProperty("preset", restsOn.preset());
        json.writeNumberProperty("guessed", restsOn.guessed());
        json.writeNumberProperty("unstated", restsOn.unstated());
        Parts.strings(json, "sentences", restsOn.sentences());
        tried(json, restsOn.tried());
        json.writeEndObject();
    }

    private static void tried(JsonGenerator json, RestsOn.@Nullable Tried tried) {
        if (tried == null) {
            json.writeNullProperty("tried");
            return;
        }
        json.writeObjectPropertyStart("tried");
        json.writeNumberProperty("figures", tried.figures());
        json.writeNumberProperty("fromNanos", tried.fromNanos());
        json.writeNumberProperty("untilNanos", tried.untilNanos());
        json.writeNumberProperty("idle", tried.idle());
        Parts.strings(json, "refused", tried.refused());
        json.writeNumberProperty("left", tried.left());
        next(json, tried.next());
        json.writeEndObject();
    }

    private static void next(JsonGenerator json, RestsOn.@Nullable Next next) {
        if (next == null) {
            json.writeNullProperty("next");
            return;
        }
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

    private static void strain(JsonGenerator json, String key, @Nullable Strain strain) {
        if (strain == null) {
            json.writeNullProperty(key);
            return;
        }
        json.writeObjectPropertyStart(key);
        json.writeNumberProperty("failing", strain.failing());
        json.writeNumberProperty("share", strain.share());
        json.writeStringProperty("tightest", strain.tightest());
        json.writeEndObject();
    }
}
