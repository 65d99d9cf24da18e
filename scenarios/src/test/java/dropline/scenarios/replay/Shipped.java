package dropline.scenarios.replay;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.harness.pitfile.PitFile;
import dropline.harness.recording.PitFeed;
import dropline.harness.recording.ReadOptions;
import dropline.harness.recording.RecordingFiles;
import dropline.harness.replay.Progress;
import dropline.harness.replay.Replay;
import dropline.harness.replay.Replayed;
import dropline.harness.replay.Source;
import dropline.harness.verdict.Recording;
import dropline.harness.verdict.ReplayResult;
import dropline.harness.verdict.Run;
import dropline.harness.verdict.Verdicts;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Objects;

/** The pits and the recording that ship with Dropline, and their replay. */
final class Shipped {
    static final Path DEMO_PIT = Path.of("demo/pit.yaml");
    static final Path DEMO_FLIGHT = Path.of("demo/flight.dlr");
    static final Path REFERENCE_BUS = Path.of("reference/bus.yaml");
    static final Path REFERENCE_BUS_WITH_STATE = Path.of("reference/bus-with-state.yaml");

    private static final long SECOND = 1_000_000_000L;

    private Shipped() {}

    static Pit pit(Path file) {
        PitFile.Result result = PitFile.read(file);
        if (result instanceof PitFile.Understood understood) {
            return understood.pit();
        }
        throw new AssertionError(result);
    }

    /** The load a pit describes, for so long. */
    static Replayed load(Pit pit, long seconds, long seed) throws IOException {
        Pit.Load load = Objects.requireNonNull(pit.load());
        return new Replay(pit, () -> Source.load(pit, load, seconds * SECOND), seed, 1).run(false, null, Progress.NONE);
    }

    /** A stretch of the demo flight through the demo pit. */
    static Replayed demo(long fromSeconds, long toSeconds, long seed, int threads) throws IOException {
        return demo(pit(DEMO_PIT), fromSeconds * SECOND, toSeconds * SECOND, seed, threads);
    }

    /** The whole demo flight through the demo pit. */
    static Replayed demo(Pit pit, long seed) throws IOException {
        return demo(pit, 0, PitFeed.TO_THE_END, seed, 2);
    }

    private static Replayed demo(Pit pit, long fromNanos, long toNanos, long seed, int threads) throws IOException {
        Source.Opening opening =
                () -> Source.recording(RecordingFiles.of(DEMO_FLIGHT), pit, ReadOptions.strict(), fromNanos, toNanos);
        return new Replay(pit, opening, seed, threads).run(false, null, Progress.NONE);
    }

    static ReplayResult judged(Pit pit, String played, Replayed replayed, long seed) {
        Run run = new Run(
                "test", new Recording(played, replayed.durationNanos()), seed, replayed.digest(), replayed.losses());
        return new Verdicts(pit, Layout.of(pit)).of(run, replayed.segments(), replayed.failures());
    }
}
