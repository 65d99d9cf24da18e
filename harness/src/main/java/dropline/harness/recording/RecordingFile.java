package dropline.harness.recording;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Which form a file has: when read by how it begins, when written by its name. */
final class RecordingFile {
    private static final int LOOK = 4096;

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
            TextLook look = TextLook.at(source.peek(LOOK));
            mustBeText(source, look);
            Optional<NamedLines.Opening> named = named(look, options);
            if (named.isEmpty()) {
                return CsvRecording.open(source, look, options);
            }
            source.close();
            return NamedRecording.open(file, named.get(), options);
        } catch (IOException | RuntimeException e) {
            source.close();
            throw e;
        }
    }

    static boolean isMeant(Path file) {
        if (RecordingForm.of(file).isPresent()) {
            return true;
        }
        try (SourceStream source = SourceStream.open(file)) {
            TextLook look = TextLook.at(source.peek(LOOK));
            return source.isPacked()
                    || source.beginsWithMagic()
                    || JournalFormat.begins(source.peek(JournalFormat.MAGIC_LENGTH))
                    || look.isJson()
                    || look.isJsonList()
                    || look.isTable();
        } catch (IOException e) {
            return false;
        }
    }

    private static void mustBeText(SourceStream source, TextLook look) throws RecordingException {
        String binary = look.binary();
        if (binary != null) {
            throw RecordingProblems.one(RecordingProblems.notARecording(source.name(), binary));
        }
        if (look.isJsonList()) {
            throw RecordingProblems.one(RecordingProblems.jsonList(source.name()));
        }
    }

    /** How to open a text that names each value where it stands; empty for a table with a column for each. */
    private static Optional<NamedLines.Opening> named(TextLook look, ReadOptions options) {
        if (look.isJson()) {
            return Optional.of(source -> new JsonLines(source, look.charset(), options));
        }
        return LongHeader.of(look.names())
                .map(header -> source -> LongCsvLines.open(source, look.separator(), header, options));
    }

    static RecordingWriter create(Path file, List<RecordingColumn> columns, List<String> controls) throws IOException {
        RecordingForm form = RecordingForm.of(file)
                .orElseThrow(() -> new IllegalArgumentException(
                        "a recording's name must end in .dlr, .csv, .long.csv or .jsonl, or that with .gz: " + file));
        CheckedWriter.checkNames(columns, controls);
        PendingFile pending = new PendingFile(file, RecordingForm.isPacked(file));
        try {
            RowSink sink = form.sink(pending.out(), columns, controls);
            return new CheckedWriter(pending, sink, columns, controls);
        } catch (IOException | RuntimeException e) {
            pending.close();
            throw e;
        }
    }
}
