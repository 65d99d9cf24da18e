package dropline.harness.size;

import dropline.bus.host.StateBlock;
import dropline.harness.recording.StateFeed;
import dropline.harness.replay.Source;
import java.util.List;
import java.util.OptionalLong;

/** One block, played at once. */
record PlayedOnce(StateBlock block) implements Source {
    @Override
    public StateFeed feed() {
        return new StateFeed() {
            @Override
            public boolean fill(StateBlock into, long untilNanos) {
                into.clear();
                for (int row = 0; row < block.rows(); row++) {
                    into.addRow(block.rowNanos(row));
                    for (int i = block.firstChange(row); i < block.endChange(row); i++) {
                        into.addChange(block.signal(i), block.value(i));
                    }
                }
                for (int move = 0; move < block.moves(); move++) {
                    into.addMove(block.moveNanos(move), block.moveControl(move), block.moveValue(move));
                }
                return false;
            }

            @Override
            public void close() {
                // nothing is held open
            }
        };
    }

    @Override
    public long endNanos() {
        return 10;
    }

    @Override
    public OptionalLong mostNanos() {
        return OptionalLong.of(10);
    }

    @Override
    public long reachedNanos() {
        return 10;
    }

    @Override
    public double share() {
        return 1;
    }

    @Override
    public List<String> losses() {
        return List.of();
    }
}
