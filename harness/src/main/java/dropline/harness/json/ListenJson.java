package dropline.harness.json;

import dropline.harness.finding.Finding;
import dropline.harness.listen.Listening;
import dropline.harness.listen.NodeTally;
import java.io.IOException;
import java.io.Writer;
import java.util.List;

/** What was heard on a pair as one JSON document; documented in {@code docs/live.md}. */
public final class ListenJson {
    private ListenJson() {}

    /**
     * Writes it and a line feed, and flushes; does not close.
     *
     * @param throughAnAdapter whether an adapter's delays are in the times
     */
    public static void write(Listening heard, boolean throughAnAdapter, List<Finding> findings, Writer writer)
            throws IOException {
        Document.write(writer, json -> {
            json.writeStartObject();
            json.writeNumberProperty("version", 1);
            json.writeNumberProperty("spanNanos", heard.spanNanos());
            json.writeBooleanProperty("throughAnAdapter", throughAnAdapter);
            json.writeNumberProperty("bytes", heard.bytes());
            json.writeNumberProperty("unsoundBytes", heard.unsound());
            json.writeNumberProperty("lostBytes", heard.overrun());
            json.writeNumberProperty("broadcasts", heard.broadcasts());
            json.writeNumberProperty("strayReplies", heard.strayReplies());
            json.writeArrayPropertyStart("nodes");
            for (NodeTally node : heard.nodes()) {
                json.writeStartObject();
                json.writeNumberProperty("address", node.address());
                json.writeStringProperty("name", node.name());
                json.writeNumberProperty("asked", node.asked());
                json.writeNumberProperty("answered", node.answered());
                json.writeNumberProperty("minGapNanos", node.leastGapNanos());
                json.writeNumberProperty("meanGapNanos", node.meanGapNanos());
                json.writeNumberProperty("maxGapNanos", node.mostGapNanos());
                json.writeNumberProperty("meanRoundNanos", node.meanRoundNanos());
                json.writeNumberProperty("maxRoundNanos", node.longestRoundNanos());
                json.writeNumberProperty("restarts", node.restarts());
                json.writeNumberProperty("receiveErrors", node.receiveErrors());
                json.writeNumberProperty("displayStops", node.displayStops());
                json.writeEndObject();
            }
            json.writeEndArray();
            Parts.findings(json, "findings", findings);
            json.writeEndObject();
        });
    }
}
