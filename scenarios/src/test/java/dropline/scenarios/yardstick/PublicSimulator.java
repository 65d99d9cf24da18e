package dropline.scenarios.yardstick;

import dropline.bus.pit.Pit;
import dropline.harness.measure.PanelMeasure;
import dropline.harness.measure.SegmentMeasures;
import dropline.harness.measure.SlotMeasure;
import dropline.harness.measure.Times;
import dropline.harness.pitfile.PitFile;
import dropline.harness.replay.Progress;
import dropline.harness.replay.Replay;
import dropline.harness.replay.Source;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Objects;

/** The reference bus through the public simulator, as a replay runs it: all measures, and the digest. */
final class PublicSimulator implements Model {
    private final Pit pit;
    private final Pit.Load load;
    private final long seed;

    /** @param file the pit's */
    PublicSimulator(Path file, long seed) {
        if (!(PitFile.read(file) instanceof PitFile.Understood understood)) {
            throw new IllegalArgumentException("the reference bus must be right: file=" + file);
        }
        pit = understood.pit();
        load = Objects.requireNonNull(pit.load());
        this.seed = seed;
    }

    @Override
    public Result run(long seconds) {
        Source.Opening source = () -> Source.load(pit, load, seconds * 1_000_000_000L);
        try {
            return result(new Replay(pit, source, seed, 1)
                    .run(false, null, Progress.NONE)
                    .segments()
                    .get(0));
        } catch (IOException unexpected) {
            throw new UncheckedIOException(unexpected);
        }
    }

    private static Result result(SegmentMeasures bus) {
        Times all = new Times();
        for (PanelMeasure panel : bus.panels()) {
            for (SlotMeasure slot : panel.slots()) {
                all.addAll(slot.latency());
            }
        }
        return new Result(
                bus.bus().asked() + bus.bus().answered() + bus.bus().stateFrames(),
                all.meanNanos(),
                all.percentileNanos(99),
                bus.bus().cycles().meanNanos());
    }
}
