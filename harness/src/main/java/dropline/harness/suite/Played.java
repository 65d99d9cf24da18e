package dropline.harness.suite;

import dropline.bus.pit.Pit;
import dropline.harness.pitfile.PitFile;
import dropline.harness.recording.ReadOptions;
import dropline.harness.recording.RecordingFiles;
import dropline.harness.replay.Source;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Objects;

/** What a run plays through its pit. */
sealed interface Played {

    /** For people. */
    String name();

    /** It and what else counts, as 16 hexadecimal digits. */
    String content(String more) throws IOException;

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
        public String content(String more) throws IOException {
            MessageDigest digest = sha256();
            try (InputStream in = Files.newInputStream(file)) {
                byte[] buffer = new byte[1 << 16];
                for (int count = in.read(buffer); count >= 0; count = in.read(buffer)) {
                    digest.update(buffer, 0, count);
                }
            }
            return short16(digest, fromNanos + " " + toNanos + more);
        }

        @Override
        public Source.Opening opening(PitFile.Understood pit) {
            ReadOptions options = new ReadOptions(false, pit.recordingTime());
            return () -> Source.recording(RecordingFiles.of(file), pit.pit(), options, fromNanos, toNanos);
        }
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException missing) {
            throw new AssertionError("every Java has SHA-256", missing);
        }
    }

    private static String short16(MessageDigest digest, String more) {
        byte[] bytes = digest.digest(more.getBytes(StandardCharsets.UTF_8));
        return HexFormat.of().formatHex(bytes, 0, 8);
    }

    /** The load that the pit describes, for a while. */
    record Load(long durationNanos) implements Played {
        @Override
        public String name() {
            return "described load";
        }

        @Override
        public String content(String more) {
            return short16(sha256(), durationNanos + more);
        }

        @Override
        public Source.Opening opening(PitFile.Understood pit) {
            Pit.Load load = Objects.requireNonNull(pit.pit().load(), "a load is played only where the pit has one");
            return () -> Source.load(pit.pit(), load, durationNanos);
        }
    }
}
