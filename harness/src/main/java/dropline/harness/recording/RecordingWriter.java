package dropline.harness.recording;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/**
 * Writes a recording. It grows in a temporary file beside its place and gets there only by {@link #finish()}; closing
 * it unfinished leaves what was there before untouched. Not for use by several threads.
 */
public interface RecordingWriter extends Closeable {

    /**
     * Begins a recording; the name's ending says in which form: {@code .dlr} compact, {@code .csv} wide CSV,
     * {@code .long.csv} long CSV, {@code .jsonl} JSON lines; {@code .gz} behind packs it.
     *
     * @param columns in order, no two of one name
     * @param controls names of the controls whose moves will be written, no two the same
     * @throws IllegalArgumentException for another ending
     */
    static RecordingWriter create(Path file, List<RecordingColumn> columns, List<String> controls) throws IOException {
        return RecordingFile.create(file, columns, controls);
    }

    /**
     * Adds a row.
     *
     * @param atNanos not before the last row or move
     * @param values a finite value for every column, rounded to the column's decimals; NaN for "as before"
     */
    void row(long atNanos, double[] values) throws IOException;

    /**
     * Adds a control's move.
     *
     * @param atNanos not before the last row or move
     * @param control one of those named at the beginning
     * @param value its new position; for a button 1 pressed and 0 let go, for an encoder its count
     */
    void move(long atNanos, String control, int value) throws IOException;

    /** Completes the recording and puts it in its place; nothing may be added after. */
    void finish() throws IOException;
}
