package dropline.harness.recording;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is read as one recording: a file, and another from which the controls' moves come, if they were recorded apart.
 *
 * @param states holds the states, and moves too
 * @param controls holds only moves; null for none. The unit of its times is what its own header says
 */
public record RecordingFiles(Path states, @Nullable Path controls) {

    /** One file that holds all there is. */
    public static RecordingFiles of(Path recording) {
        return new RecordingFiles(recording, null);
    }

    /** The files, for looking at them. */
    public List<Path> paths() {
        return controls == null ? List.of(states) : List.of(states, controls);
    }

    /**
     * Opens them as one.
     *
     * @throws RecordingException if one is no recording, or the two cannot be taken together
     */
    public RecordingReader open(ReadOptions options) throws IOException {
        RecordingReader reader = RecordingReader.open(states, options);
        if (controls == null) {
            return reader;
        }
        try {
            RecordingReader moves = RecordingReader.open(controls, options.byHeader());
            try {
                FilesCheck.mustBeMoves(this, reader, moves);
                return new MergedReader(reader, moves);
            } catch (IOException | RuntimeException e) {
                moves.close();
                throw e;
            }
        } catch (IOException | RuntimeException e) {
            reader.close();
            throw e;
        }
    }

    /**
     * Reads two files through and compares their times. Does nothing for one file.
     *
     * @throws RecordingException if their times do not overlap, or stand in different units by all appearance
     */
    public void mustAgree(ReadOptions options) throws IOException {
        if (controls != null) {
            FilesCheck.mustAgree(this, controls, options);
        }
    }
}
