package dropline.harness.suite;

import dropline.bus.pit.Pit;
import dropline.harness.pitfile.PitFile;
import dropline.harness.recording.ReadOptions;
import dropline.harness.recording.RecordingFiles;
import dropline.harness.replay.Source;
import java.nio.file.Path;
import java.util.Objects;

/** What a run plays through its pit. */
sealed interface Played {

    /** For people. */
    String name();

    /** Opens it. */
    Source.Opening opening(PitFile.Understood pit);

    /**
     * A stretch of a recording.
     *
     * @param name as the suite names it
     * @param fromNanos where it begins, ns into the recording
     * @param toNanos where it ends, or {@link dropline.harness.recording.PitFeed#TO_THE_END}
     */
    record Recorded(String name, Path file, long fromNanos, long toNanos) implements Played {
        @Override
        public Source.Opening opening(PitFile.Understood pit) {
            ReadOptions options = new ReadOptions(false, pit.recordingTime());
            return () -> Source.recording(RecordingFiles.of(file), pit.pit(), options, fromNanos, toNanos);
        }
    }

    /** The load that the pit describes, for a while. */
    record Load(long durationNanos) implements Played {
        @Override
        public String name() {
            return "described load";
        }

        @Override
        public Source.Opening opening(PitFile.Understood pit) {
            Pit.Load load = Objects.requireNonNull(pit.pit().load(), "a load is played only where the pit has one");
            return () -> Source.load(pit.pit(), load, durationNanos);
        }
    }
}
