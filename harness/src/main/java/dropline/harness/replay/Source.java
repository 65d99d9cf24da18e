package dropline.harness.replay;

import dropline.bus.pit.Pit;
import dropline.harness.recording.LoadFeed;
import dropline.harness.recording.PitFeed;
import dropline.harness.recording.ReadOptions;
import dropline.harness.recording.RecordingFiles;
import dropline.harness.recording.StateFeed;
import java.io.Closeable;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/** What a replay plays, from its beginning: a recording, or a load that a pit describes. */
public interface Source extends Closeable {

    /** Opens a source once more. A replay opens it once for every time it plays it. */
    @FunctionalInterface
    interface Opening {
        Source open() throws IOException;
    }

    StateFeed feed();

    /** The run ends here at the latest, ns. */
    long endNanos();

    /** How long the run can be at most, ns, where that is known before it; empty where only the run tells. */
    OptionalLong mostNanos() throws IOException;

    /** Time of the latest row or move fed, ns. */
    long reachedNanos();

    /** Share of it that has been read, 0..1, going by bytes; 0 where {@link #endNanos()} says all. */
    double share();

    /** Share of it that has been played at an instant of the run, 0..1. */
    default double shareAt(long nanos) {
        return Math.min(1.0, endNanos() == Long.MAX_VALUE ? share() : (double) nanos / endNanos());
    }

    /** What was left out or lost on the way, a sentence each. */
    List<String> losses();

    @Override
    default void close() throws IOException {
        feed().close();
    }

    /**
     * A recording, or a stretch of it.
     *
     * @param fromNanos where to begin, ns after its first instant
     * @param toNanos where to end; {@link PitFeed#TO_THE_END} for its own end
     * @throws dropline.harness.recording.RecordingException if the recording is wrong
     */
    static Source recording(RecordingFiles files, Pit pit, ReadOptions options, long fromNanos, long toNanos)
            throws IOException {
        PitFeed feed = PitFeed.open(files, pit, options, fromNanos, toNanos);
        return new Source() {
            @Override
            public StateFeed feed() {
                return feed;
            }

            @Override
            public long endNanos() {
                return toNanos == PitFeed.TO_THE_END ? toNanos : toNanos - fromNanos;
            }

            @Override
            public OptionalLong mostNanos() throws IOException {
                return feed.mostNanos(files);
            }

            @Override
            public long reachedNanos() {
                return feed.reachedNanos();
            }

            @Override
            public double share() {
                return feed.bytesTotal() == 0 ? 1 : Math.min(1.0, (double) feed.bytesRead() / feed.bytesTotal());
            }

            @Override
            public List<String> losses() {
                List<String> losses = new ArrayList<>(feed.losses());
                if (feed.skippedRows() > 0) {
                    long rows = feed.skippedRows();
                    losses.add(rows + (rows == 1 ? " bad row was" : " bad rows were") + " left out of the recording.");
                }
                return losses;
            }
        };
    }

    /** The load, for this long. */
    static Source load(Pit pit, Pit.Load load, long durationNanos) {
        if (durationNanos <= 0) {
            throw new IllegalArgumentException("a run must last: durationNanos=" + durationNanos);
        }
        LoadFeed feed = new LoadFeed(pit, load);
        return new Source() {
            @Override
            public StateFeed feed() {
                return feed;
            }

            @Override
            public long endNanos() {
                return durationNanos;
            }

            @Override
            public OptionalLong mostNanos() {
                return OptionalLong.of(durationNanos);
            }

            @Override
            public long reachedNanos() {
                return durationNanos;
            }

            @Override
            public double share() {
                return 0;
            }

            @Override
            public List<String> losses() {
                return List.of();
            }
        };
    }
}
