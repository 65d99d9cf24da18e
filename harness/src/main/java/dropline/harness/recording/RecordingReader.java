package dropline.harness.recording;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/** Reads a recording of any form as a stream, a block at a time. Not for use by several threads. */
public interface RecordingReader extends Closeable {

    /**
     * Opens a recording, plain or gzip; its beginning says of which form it is. Forms that name each value where it
     * stands are read through once here, to learn the names.
     *
     * @throws RecordingException if it is no recording, or its header is wrong
     */
    static RecordingReader open(Path file, ReadOptions options) throws IOException {
        return RecordingFile.open(file, options);
    }

    /**
     * Whether a file is meant to be a recording, by its name's ending or by how it begins; it may still be a wrong one.
     */
    static boolean isMeant(Path file) {
        return RecordingFile.isMeant(file);
    }

    /** The columns in the file's order, without time and controls. */
    List<RecordingColumn> columns();

    /** Names of the controls whose moves it may hold. */
    List<String> controls();

    /** The line in which the columns' names stand; 0 where they do not stand in one. */
    int namesLine();

    /** The unit in which the file's times stand; empty for the compact form, whose times are always ns. */
    Optional<TimeUnit> timeUnit();

    /**
     * Fills the block with the next stretch: at least one row or move, and nothing earlier than in the stretch before.
     *
     * @return false at the end, the block then being empty
     * @throws RecordingException if rows or blocks are wrong, unless read leniently
     */
    boolean read(RecordingBlock block) throws IOException;

    /** Rows left out for being wrong, so far. Rows of a damaged block are not known and not counted. */
    long skippedRows();

    /** What was lost and could still be read past, a sentence each: damaged blocks, a cut end. */
    List<String> losses();

    /** Bytes of the file read so far, for showing progress. */
    long bytesRead();

    /** The file's length, bytes. */
    long bytesTotal();
}
