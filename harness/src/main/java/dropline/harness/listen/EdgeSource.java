package dropline.harness.listen;

import dropline.bus.wire.EdgeReceiver;
import dropline.harness.link.Arrival;
import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import java.io.IOException;
import java.util.ArrayDeque;
import org.jspecify.annotations.Nullable;

/** An analyser's edges, read as a UART reads them. */
final class EdgeSource implements Source {
    private static final double SECOND_NANOS = 1e9;

    private final Edges edges;
    private final EdgeReceiver receiver;
    private final ArrayDeque<Arrival.Received> heard = new ArrayDeque<>();
    private boolean isOver;

    EdgeSource(Edges edges, int baud, CharacterFormat format) {
        this.edges = edges;
        receiver = new EdgeReceiver(
                SECOND_NANOS / baud,
                format,
                (value, good, endNanos) -> heard.add(new Arrival.Received(endNanos, Bytes.of(value))));
    }

    @Override
    public Arrival.@Nullable Received next() throws IOException {
        while (heard.isEmpty() && !isOver) {
            if (edges.next()) {
                receiver.edge(edges.nanos(), edges.level());
            } else {
                receiver.end();
                isOver = true;
            }
        }
        return heard.poll();
    }

    @Override
    public void close() throws IOException {
        edges.close();
    }
}
