package dropline.harness.recording;

import de.siegmar.fastcsv.reader.CloseableIterator;
import de.siegmar.fastcsv.reader.CsvCallbackHandler;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** A table's text taken apart into lines and fields, the same for every form of table. */
final class CsvText {
    private static final int LONGEST_FIELD = 1 << 16;

    private CsvText() {}

    static <T> CloseableIterator<T> lines(SourceStream source, char separator, CsvCallbackHandler<T> fields)
            throws IOException {
        return CsvReader.builder()
                .fieldSeparator(separator)
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .allowUnclosedQuote(false)
                .skipEmptyLines(true)
                .detectBomHeader(true)
                .maxBufferSize(LONGEST_FIELD)
                .build(fields, source, StandardCharsets.UTF_8)
                .iterator();
    }

    static String reason(CsvParseException e) {
        return e.getCause() == null
                ? String.valueOf(e.getMessage())
                : String.valueOf(e.getCause().getMessage());
    }

    /** What the reader of the lines wrapped up. */
    static IOException cause(UncheckedIOException e) {
        IOException cause = e.getCause();
        return cause instanceof RecordingException wrong ? wrong : new IOException(e.getMessage(), e);
    }
}
