package dropline.harness.json;

import dropline.harness.link.LoopBack;
import java.io.IOException;
import java.io.Writer;
import java.util.Locale;

/** What an adapter adds as one JSON document; documented in {@code docs/ports.md}. */
public final class AdapterJson {
    private static final double HALF = 50;
    private static final double MOST = 99;
    private static final double ALL = 100;

    private AdapterJson() {}

    /** Writes it and a line feed, and flushes; does not close. */
    public static void write(LoopBack loop, String where, Writer writer) throws IOException {
        Document.write(writer, json -> {
            json.writeStartObject();
            json.writeNumberProperty("version", 1);
            json.writeStringProperty("over", where);
            json.writeNumberProperty("trips", loop.count());
            json.writeNumberProperty("lost", loop.lost());
            json.writeNumberProperty("minNanos", loop.leastNanos());
            json.writeNumberProperty("p50Nanos", loop.atMostNanos(HALF));
            json.writeNumberProperty("p99Nanos", loop.atMostNanos(MOST));
            json.writeNumberProperty("maxNanos", loop.atMostNanos(ALL));
            json.writeStringProperty("latencyTimer", loop.timer().name().toLowerCase(Locale.ROOT));
            json.writeEndObject();
        });
    }
}
