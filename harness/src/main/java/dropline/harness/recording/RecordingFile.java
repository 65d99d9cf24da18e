package dropline.harness.recording;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** Which form a file has: when read by its first bytes, when written by its name. */
final class RecordingFile {
    private RecordingFile() {}

    static RecordingReader open(Path file, ReadOptions options) throws IOException {
        SourceStream source = SourceStream.open(file);
        try {
            if (source.beginsWithMagic()) {
                return new CompactReader(source, options);
            }
            if (JournalFormat.begins(source.peek(JournalFormat.MAGIC_LENGTH))) {
                source.close();
                return JournalReader.open(file);
            }
            return CsvRecording.open(source, options);
        } catch (IOException | RuntimeException e) {
            source.close();
            throw e;
        }
    }

    static RecordingWriter create(Path file, List<RecordingColumn> columns, List<String> controls) throws IOException {
        String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
        boolean gzip = name.endsWith(".gz");
        String plain = gzip ? name.substring(0, name.length() - 3) : name;
        boolean compact = plain.endsWith(".dlr");
        if (!compact && !plain.endsWith(".csv")) {
            throw new IllegalArgumentException(
                    "a recording's name must end in .dlr, .csv, or either with .gz: " + name);
        }
        CheckedWriter.checkNames(columns, controls);
        PendingFile pending = new PendingFile(file, gzip);
        try {
            RowSink sink = compact
                    ? new CompactSink(pending.out(), columns, controls)
                    : new CsvSink(pending.out(), columns, controls);
            return new CheckedWriter(pending, sink, columns, controls);
        } catch (IOException | RuntimeException e) {
            pending.close();
            throw e;
        }
    }

    /** Whether a recording can be written under this name. */
    static boolean hasKnownEnding(Path file) {
        String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
        String plain = name.endsWith(".gz") ? name.substring(0, name.length() - 3) : name;
        return plain.endsWith(".dlr") || plain.endsWith(".csv");
    }
}
