package dropline.harness.json;

import dropline.bus.rule.Ruling;
import dropline.harness.size.BaudCurve;
import dropline.harness.size.Fared;
import dropline.harness.size.SizeResult;
import dropline.harness.size.Tight;
import dropline.harness.size.TimeAnswer;
import java.io.IOException;
import java.io.Writer;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JsonGenerator;

/** Writes a sizing as JSON, in the manner of {@link ReplayJson}; described in {@code docs/size-json.md}. */
public final class SizeJson {
    private final JsonGenerator json;

    private SizeJson(JsonGenerator json) {
        this.json = json;
    }

    /** Writes one document and a line feed, and flushes; does not close. */
    public static void write(SizeResult result, Writer writer) throws IOException {
        Document.write(writer, json -> new SizeJson(json).document(result));
    }

    private void document(SizeResult result) {
        json.writeStartObject();
        json.writeNumberProperty("version", result.version());
        json.writeStringProperty("droplineVersion", result.droplineVersion());
        json.writeStringProperty("pit", result.pit());
        json.writeStringProperty("segment", result.segment());
        json.writeObjectPropertyStart("recording");
        json.writeStringProperty("name", result.recording().name());
        json.writeNumberProperty("durationNanos", result.recording().durationNanos());
        json.writeEndObject();
        json.writeNumberProperty("fromNanos", result.fromNanos());
        json.writeNumberProperty("untilNanos", result.untilNanos());
        json.writeNumberProperty("seed", result.seed());
        json.writeNumberProperty("seeds", result.seeds());
        json.writeNumberProperty("margin", result.margin());
        json.writeNumberProperty("baud", result.baud());
        json.writeNumberProperty("panels", result.panels());
        json.writeNumberProperty("planned", result.planned());
        json.writeNumberProperty("nodes", result.nodes());
        json.writeNumberProperty("addresses", result.addresses());
        Parts.strings(json, "adding", result.adding());
        json.writeBooleanProperty("fits", result.fits());
        json.writeNumberProperty("more", result.more());
        json.writeStringProperty("limitedBy", Parts.word(result.limitedBy()));
        Parts.strings(json, "sentences", result.sentences());
        json.writeArrayPropertyStart("aside");
        result.aside().forEach(this::fared);
        json.writeEndArray();
        time(result.time());
        ruled(result);
        json.writeArrayPropertyStart("curves");
        result.curves().forEach(this::curve);
        json.writeEndArray();
        helping(result);
        Parts.strings(json, "losses", result.losses());
        OriginJson.write(json, result.restsOn());
        json.writeEndObject();
    }

    private void time(TimeAnswer time) {
        json.writeObjectPropertyStart("time");
        json.writeNumberProperty("more", time.more());
        json.writeNumberProperty("inFirstSeed", time.inFirstSeed());
        json.writeNumberProperty("mostBySeed", time.mostBySeed());
        json.writeBooleanProperty("confirmed", time.confirmed());
        json.writeBooleanProperty("beyondOnWhole", time.beyondOnWhole());
        json.writeNumberProperty("deadKinds", time.deadKinds());
        tight("tightest", time.tightest());
        tight("beyond", time.beyond());
        json.writeEndObject();
    }

    private void ruled(SizeResult result) {
        json.writeArrayPropertyStart("rules");
        for (SizeResult.Ruled ruled : result.ruled()) {
            json.writeStartObject();
            json.writeStringProperty("name", ruled.name());
            json.writeNumberProperty("more", ruled.more());
            json.writeArrayPropertyStart("broken");
            for (Ruling ruling : ruled.broken()) {
                json.writeStartObject();
                json.writeStringProperty("rule", ruling.rule().title());
                json.writeStringProperty("where", ruling.where());
                json.writeNumberProperty("value", ruling.value());
                json.writeNumberProperty("limit", ruling.limit());
                json.writeStringProperty("unit", ruling.rule().unit().symbol());
                json.writeStringProperty("source", ruling.rule().source());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void curve(BaudCurve curve) {
        json.writeStartObject();
        json.writeNumberProperty("baud", curve.baud());
        json.writeNumberProperty("more", curve.more());
        json.writeNumberProperty("knee", curve.knee());
        json.writeNumberProperty("withoutAdapter", curve.withoutAdapter());
        tight("beyond", curve.beyond());
        json.writeArrayPropertyStart("points");
        for (BaudCurve.Point point : curve.points()) {
            json.writeStartObject();
            json.writeNumberProperty("more", point.more());
            json.writeStringProperty("name", point.name());
            json.writeNumberProperty("p99Nanos", point.p99Nanos());
            json.writeNumberProperty("worstNanos", point.worstNanos());
            json.writeNumberProperty("limitNanos", point.limitNanos());
            json.writeBooleanProperty("loses", point.loses());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayPropertyStart("misfits");
        for (BaudCurve.Misfit misfit : curve.misfits()) {
            json.writeStartObject();
            json.writeStringProperty("node", misfit.node());
            json.writeNumberProperty("error", misfit.error());
            json.writeStringProperty("standing", Parts.word(misfit.standing()));
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private void helping(SizeResult result) {
        json.writeArrayPropertyStart("buys");
        for (SizeResult.Buys buys : result.buys()) {
            json.writeStartObject();
            json.writeStringProperty("change", buys.change());
            json.writeNumberProperty("more", buys.more());
            tight("beyond", buys.beyond());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayPropertyStart("guesses");
        for (SizeResult.GuessedNumber guess : result.guesses()) {
            json.writeStartObject();
            json.writeStringProperty("figure", guess.figure());
            json.writeStringProperty("about", guess.text());
            json.writeStringProperty("where", guess.where());
            number("half", guess.half());
            number("twice", guess.twice());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayPropertyStart("coarse");
        for (SizeResult.CoarseMotion coarse : result.coarse()) {
            json.writeStartObject();
            json.writeStringProperty("panel", coarse.panel());
            json.writeStringProperty("indicator", coarse.indicator());
            json.writeNumberProperty("speed", coarse.speed());
            json.writeNumberProperty("statesPerSecond", coarse.statesPerSecond());
            json.writeNumberProperty("step", coarse.step());
            json.writeStringProperty("unit", coarse.unit());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void number(String key, @Nullable Number value) {
        if (value == null) {
            json.writeNullProperty(key);
        } else {
            json.writeNumberProperty(key, value.longValue());
        }
    }

    private void tight(String key, @Nullable Tight tight) {
        if (tight == null) {
            json.writeNullProperty(key);
            return;
        }
        json.writeObjectPropertyStart(key);
        json.writeStringProperty("deadNode", tight.deadNode() == null ? "" : tight.deadNode());
        number("boundNanos", tight.isBounded() ? tight.boundNanos() : null);
        json.writeName("fared");
        fared(tight.fared());
        json.writeEndObject();
    }

    private void fared(Fared fared) {
        json.writeStartObject();
        json.writeStringProperty("name", fared.name());
        json.writeBooleanProperty("control", fared.control());
        json.writeNumberProperty("count", fared.count());
        json.writeNumberProperty("p99Nanos", fared.p99Nanos());
        json.writeNumberProperty("worstNanos", fared.worstNanos());
        json.writeNumberProperty("limitNanos", fared.limitNanos());
        json.writeNumberProperty("lost", fared.lost());
        json.writeStringProperty(
                "mostly", fared.mostly() == null ? "" : fared.mostly().words());
        json.writeEndObject();
    }
}
