package dropline.harness.json;

import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.rule.Ruling;
import dropline.harness.plan.PlanResult;
import dropline.harness.plan.PlanResult.Move;
import dropline.harness.plan.PlanResult.PlannedSegment;
import dropline.harness.plan.PlanResult.Split;
import dropline.harness.plan.ShoppingList;
import dropline.harness.plan.ShoppingList.Item;
import dropline.harness.size.Fared;
import dropline.harness.size.Tight;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JsonGenerator;

/** Writes a plan as JSON, in the manner of {@link ReplayJson}; described in {@code docs/plan.md}. */
public final class PlanJson {
    private PlanJson() {}

    /** Writes one document and a line feed, and flushes; does not close. */
    public static void write(PlanResult result, Writer writer) throws IOException {
        Document.write(writer, json -> {
            json.writeStartObject();
            document(json, result);
            json.writeEndObject();
        });
    }

    private static void document(JsonGenerator json, PlanResult result) {
        json.writeNumberProperty("version", result.version());
        json.writeStringProperty("droplineVersion", result.droplineVersion());
        json.writeStringProperty("pit", result.pit());
        json.writeObjectPropertyStart("recording");
        json.writeStringProperty("name", result.recording().name());
        json.writeNumberProperty("durationNanos", result.recording().durationNanos());
        json.writeEndObject();
        json.writeNumberProperty("seed", result.seed());
        json.writeNumberProperty("seeds", result.seeds());
        json.writeNumberProperty("margin", result.margin());
        json.writeBooleanProperty("passes", result.passes());
        json.writeBooleanProperty("offered", result.offered());
        json.writeBooleanProperty("everyWayWeighed", result.exact());
        json.writeNumberProperty("runs", result.runs());
        json.writeStringProperty("digest", result.digest());
        names(json, "sentences", result.sentences());
        json.writeArrayPropertyStart("segments");
        result.segments().forEach(segment -> segment(json, segment));
        json.writeEndArray();
        json.writeArrayPropertyStart("moves");
        result.moves().forEach(move -> move(json, move));
        json.writeEndArray();
        names(json, "dropped", result.dropped());
        json.writeArrayPropertyStart("splitPlaces");
        result.splits().forEach(split -> split(json, split));
        json.writeEndArray();
        json.writeArrayPropertyStart("hopeless");
        result.hopeless().forEach(fared -> {
            json.writeStartObject();
            fared(json, fared);
            json.writeEndObject();
        });
        json.writeEndArray();
        rulings(json, "broken", result.broken());
        rulings(json, "guidance", result.guidance());
        toBuy(json, result.toBuy());
    }

    private static void names(JsonGenerator json, String key, List<String> names) {
        json.writeArrayPropertyStart(key);
        names.forEach(json::writeString);
        json.writeEndArray();
    }

    private static void segment(JsonGenerator json, PlannedSegment segment) {
        json.writeStartObject();
        json.writeStringProperty("name", segment.name());
        json.writeStringProperty("like", segment.like());
        json.writeNumberProperty("baud", segment.baud());
        json.writeNumberProperty("baudBefore", segment.baudBefore());
        json.writeStringProperty("state", word(segment.state()));
        json.writeStringProperty("stateBefore", word(segment.stateBefore()));
        json.writeNumberProperty("timeOutNanos", segment.timeOutNanos());
        json.writeNumberProperty("timeOutBeforeNanos", segment.timeOutBeforeNanos());
        json.writeNumberProperty("boards", segment.nodes());
        json.writeNumberProperty("panels", segment.panels());
        json.writeObjectPropertyStart("weights");
        segment.polledOtherwise().forEach(one -> json.writeNumberProperty(one.node(), one.weight()));
        json.writeEndObject();
        tight(json, "tightest", segment.healthy());
        tight(json, "tightestWithOneDead", segment.dead());
        json.writeEndObject();
    }

    private static String word(StateDelivery state) {
        return state == StateDelivery.BROADCAST ? "broadcast" : "addressed";
    }

    private static void tight(JsonGenerator json, String key, @Nullable Tight tight) {
        if (tight == null) {
            json.writeNullProperty(key);
            return;
        }
        json.writeObjectPropertyStart(key);
        fared(json, tight.fared());
        json.writeStringProperty("deadNode", tight.deadNode());
        if (tight.isBounded()) {
            json.writeNumberProperty("boundNanos", tight.boundNanos());
        } else {
            json.writeNullProperty("boundNanos");
        }
        json.writeEndObject();
    }

    private static void fared(JsonGenerator json, Fared fared) {
        json.writeStringProperty("name", fared.name());
        json.writeBooleanProperty("control", fared.control());
        json.writeNumberProperty("p99Nanos", fared.p99Nanos());
        json.writeNumberProperty("worstNanos", fared.worstNanos());
        json.writeNumberProperty("limitNanos", fared.limitNanos());
        json.writeNumberProperty("lost", fared.lost());
    }

    private static void move(JsonGenerator json, Move move) {
        json.writeStartObject();
        json.writeStringProperty("node", move.node());
        names(json, "panels", move.panels());
        json.writeStringProperty("from", move.from());
        json.writeStringProperty("to", move.to());
        json.writeNumberProperty("addressBefore", move.addressBefore());
        json.writeNumberProperty("address", move.address());
        json.writeEndObject();
    }

    private static void split(JsonGenerator json, Split split) {
        json.writeStartObject();
        json.writeStringProperty("place", split.place());
        names(json, "segments", split.segments());
        json.writeBooleanProperty("speakAlike", split.alike());
        json.writeBooleanProperty("wouldFitOne", split.fitsOne());
        json.writeEndObject();
    }

    private static void rulings(JsonGenerator json, String key, List<Ruling> rulings) {
        json.writeArrayPropertyStart(key);
        rulings.forEach(ruling -> Parts.ruling(json, ruling));
        json.writeEndArray();
    }

    private static void toBuy(JsonGenerator json, @Nullable ShoppingList list) {
        if (list == null) {
            json.writeNullProperty("toBuy");
            return;
        }
        json.writeObjectPropertyStart("toBuy");
        items(json, "boards", list.boards());
        items(json, "transceivers", list.transceivers());
        items(json, "adapters", list.adapters());
        json.writeArrayPropertyStart("cables");
        list.cable().forEach(pair -> {
            json.writeStartObject();
            json.writeStringProperty("segment", pair.segment());
            json.writeNumberProperty("metres", pair.metres());
            json.writeNumberProperty("unknownStretches", pair.unknown());
            json.writeEndObject();
        });
        json.writeEndArray();
        json.writeObjectPropertyStart("supplyWireMetres");
        list.wire().forEach(wire -> json.writeNumberProperty(wire.gauge(), wire.metres()));
        json.writeEndObject();
        json.writeArrayPropertyStart("supplies");
        list.supplies().forEach(amps -> {
            json.writeStartObject();
            json.writeStringProperty("supply", amps.supply());
            json.writeNumberProperty("lastingAmps", amps.lasting());
            json.writeNumberProperty("ratingWantedAmps", amps.ratingWanted());
            json.writeNumberProperty("unknownCurrents", amps.unknown());
            json.writeEndObject();
        });
        json.writeEndArray();
        json.writeObjectPropertyStart("hubPorts");
        list.ports().forEach(ports -> json.writeNumberProperty(ports.hub(), ports.used()));
        json.writeEndObject();
        json.writeEndObject();
    }

    private static void items(JsonGenerator json, String key, List<Item> items) {
        json.writeArrayPropertyStart(key);
        for (Item item : items) {
            json.writeStartObject();
            json.writeStringProperty("kind", item.kind());
            json.writeNumberProperty("count", item.count());
            json.writeEndObject();
        }
        json.writeEndArray();
    }
}
