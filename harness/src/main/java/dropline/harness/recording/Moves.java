package dropline.harness.recording;

import dropline.bus.host.StateBlock;
import java.io.IOException;

/** The moves of controls in what is played, without its states, by a clock on which it begins at some instant. */
public final class Moves {
    private final StateFeed feed;
    private final StateBlock read = new StateBlock();
    private final StateBlock moves = new StateBlock();

    /** @param feed is read for nothing else; whoever opened it closes it */
    public Moves(StateFeed feed) {
        this.feed = feed;
    }

    /** No moves. */
    public static Moves none() {
        return new Moves(new StateFeed() {
            @Override
            public boolean fill(StateBlock block, long untilNanos) {
                block.clear();
                return false;
            }

            @Override
            public void close() {
                // nothing is held open
            }
        });
    }

    /**
     * Those since the last call; the next call reuses the block.
     *
     * @param untilNanos before this instant
     * @param beginNanos when what is played begins
     * @throws IOException if it cannot be read
     */
    public StateBlock until(long untilNanos, long beginNanos) throws IOException {
        moves.clear();
        feed.fill(read, untilNanos - beginNanos);
        for (int i = 0; i < read.moves(); i++) {
            moves.addMove(read.moveNanos(i) + beginNanos, read.moveControl(i), read.moveValue(i));
        }
        return moves;
    }
}
