package dropline.harness.power;

import dropline.bus.host.StateBlock;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Signal;
import dropline.harness.recording.StateFeed;
import dropline.harness.replay.Source;
import java.util.List;
import java.util.OptionalLong;

/** Plays one state and then nothing new: the first that a computer sends. */
final class FirstState implements Source, StateFeed {
    private final Pit pit;
    private final long atNanos;
    private final long endNanos;
    private boolean given;

    FirstState(Pit pit, long atNanos, long endNanos) {
        this.pit = pit;
        this.atNanos = atNanos;
        this.endNanos = endNanos;
    }

    @Override
    public boolean fill(StateBlock block, long untilNanos) {
        block.clear();
        if (!given && atNanos < untilNanos) {
            given = true;
            block.addRow(atNanos);
            for (int i = 0; i < pit.signals().size(); i++) {
                Signal signal = pit.signals().get(i);
                block.addChange(i, signal.lowest() + (signal.steps() > 1 ? signal.steps() / 2 : 0));
            }
        }
        return true;
    }

    @Override
    public StateFeed feed() {
        return this;
    }

    @Override
    public void close() {
        // Nothing is held open.
    }

    @Override
    public long endNanos() {
        return endNanos;
    }

    @Override
    public OptionalLong mostNanos() {
        return OptionalLong.of(endNanos);
    }

    @Override
    public long reachedNanos() {
        return endNanos;
    }

    @Override
    public double share() {
        return 0;
    }

    @Override
    public List<String> losses() {
        return List.of();
    }
}
