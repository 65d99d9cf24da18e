package dropline.harness.recording;

import dropline.bus.host.StateBlock;
import java.io.Closeable;
import java.io.IOException;

/** Where a run's states and control moves come from, stretch by stretch: a recording or a described load. */
public interface StateFeed extends Closeable {

    /**
     * Empties the block and fills it with the rows and moves from where the last call ended up to, but without,
     * {@code untilNanos}. Time 0 is the feed's beginning. The caller chooses the stretch and with it the memory used.
     *
     * @return whether anything may follow at or after {@code untilNanos}; the block may hold rows either way
     * @throws RecordingException if the recording is wrong, with all of its problems
     */
    boolean fill(StateBlock block, long untilNanos) throws IOException;
}
