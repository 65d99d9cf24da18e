package dropline.harness.link;

import dropline.bus.trace.TraceSink;
import dropline.harness.live.StandIn;
import dropline.harness.recording.Moves;
import java.io.IOException;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;

/** The node of {@link OneNode}, played in real time at the far end of a link, on a thread of its own. */
final class PlayedNode implements AutoCloseable {
    private final AtomicBoolean stop = new AtomicBoolean();
    private final Link far;
    private final Thread thread;

    PlayedNode(Link far) {
        this.far = far;
        StandIn node = new StandIn(OneNode.pit(), 0, 1, List.of(), Moves.none(), new TraceSink() {}, far);
        thread = new Thread(() -> play(node), "played node");
        thread.setDaemon(true);
        thread.start();
    }

    private void play(StandIn node) {
        try {
            node.play(stop::get);
        } catch (IOException gone) {
            throw new AssertionError(gone);
        }
    }

    @Override
    public void close() {
        stop.set(true);
        try {
            thread.join(5_000);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
        far.close();
    }
}
