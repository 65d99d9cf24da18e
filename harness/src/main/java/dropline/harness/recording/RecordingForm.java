package dropline.harness.recording;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The forms a recording can be written in, each with the ending of its files' names. */
enum RecordingForm {
    COMPACT(".dlr") {
        @Override
        RowSink sink(OutputStream out, List<RecordingColumn> columns, List<String> controls) throws IOException {
            return new CompactSink(out, columns, controls);
        }
    },
    // before the other CSV, whose ending it has too
    LONG_CSV(".long.csv") {
        @Override
        RowSink sink(OutputStream out, List<RecordingColumn> columns, List<String> controls) throws IOException {
            return new LongCsvSink(out, columns, controls);
        }
    },
    WIDE_CSV(".csv") {
        @Override
        RowSink sink(OutputStream out, List<RecordingColumn> columns, List<String> controls) throws IOException {
            return new CsvSink(out, columns, controls);
        }
    },
    JSON_LINES(".jsonl") {
        @Override
        RowSink sink(OutputStream out, List<RecordingColumn> columns, List<String> controls) throws IOException {
            return new JsonSink(out, columns, controls);
        }
    };

    private static final String PACKED = ".gz";

    private final String ending;

    RecordingForm(String ending) {
        this.ending = ending;
    }

    abstract RowSink sink(OutputStream out, List<RecordingColumn> columns, List<String> controls) throws IOException;

    /** The form that a file's name asks for, packed or not; empty if it asks for none. */
    static Optional<RecordingForm> of(Path file) {
        String name = name(file);
        String plain = isPacked(file) ? name.substring(0, name.length() - PACKED.length()) : name;
        for (RecordingForm form : values()) {
            if (plain.endsWith(form.ending)) {
                return Optional.of(form);
            }
        }
        return Optional.empty();
    }

    static boolean isPacked(Path file) {
        return name(file).endsWith(PACKED);
    }

    private static String name(Path file) {
        Path name = file.getFileName();
        return name == null ? "" : name.toString().toLowerCase(Locale.ROOT);
    }
}
