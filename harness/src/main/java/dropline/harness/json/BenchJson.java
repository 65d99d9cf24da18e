package dropline.harness.json;

import dropline.harness.bench.BenchResult;
import dropline.harness.bench.Item;
import java.io.IOException;
import java.io.Writer;
import java.util.Locale;

/** An examination as one JSON document; documented in {@code docs/bench.md}. */
public final class BenchJson {
    private BenchJson() {}

    /** Writes it and a line feed, and flushes; does not close. */
    public static void write(BenchResult result, Writer writer) throws IOException {
        Document.write(writer, json -> {
            json.writeStartObject();
            json.writeStringProperty("subject", result.subject());
            json.writeStringProperty("over", result.over());
            json.writeNumberProperty("floor_ns", result.floorNanos());
            json.writeStringProperty("outcome", word(result.outcome().name()));
            json.writeArrayPropertyStart("items");
            for (Item item : result.items()) {
                json.writeStartObject();
                json.writeStringProperty("name", item.name());
                json.writeStringProperty("outcome", word(item.outcome().name()));
                json.writeStringProperty("says", item.says());
                json.writeNumberProperty("trials", item.trials());
                Item.Measure measure = item.measure();
                if (measure != null) {
                    json.writeNumberProperty("value_ns", measure.valueNanos());
                    json.writeNumberProperty(measure.atLeast() ? "least_ns" : "most_ns", measure.limitNanos());
                    json.writeNumberProperty("margin_ns", measure.marginNanos());
                    json.writeNumberProperty("uncertainty_ns", measure.uncertaintyNanos());
                }
                json.writeArrayPropertyStart("suspects");
                item.suspects().forEach(json::writeString);
                json.writeEndArray();
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeEndObject();
        });
    }

    private static String word(String constant) {
        return constant.toLowerCase(Locale.ROOT);
    }
}
