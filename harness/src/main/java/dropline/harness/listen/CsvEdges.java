package dropline.harness.listen;

import de.siegmar.fastcsv.reader.CloseableIterator;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The edges of one wire of a table whose first column is the time in seconds, and each other one a wire's level. */
final class CsvEdges implements Edges {
    private static final int NANOS_DIGITS = 9;

    private final Path file;
    private final CsvReader<CsvRecord> reader;
    private final CloseableIterator<CsvRecord> rows;
    private int column = 1;
    private @Nullable CsvRecord ahead;
    private long nanos = Long.MIN_VALUE;
    private int level = 1;

    private CsvEdges(Path file, char separator) throws IOException {
        this.file = file;
        reader = CsvReader.builder()
                .fieldSeparator(separator)
                .skipEmptyLines(true)
                .detectBomHeader(true)
                .ofCsvRecord(file, StandardCharsets.UTF_8);
        rows = reader.iterator();
    }

    /** @param first the file's first line */
    static CsvEdges open(Path file, String first, @Nullable String wire) throws IOException {
        CsvEdges edges = new CsvEdges(file, first.contains(";") ? ';' : ',');
        try {
            edges.head(wire);
        } catch (IOException wrong) {
            edges.close();
            throw wrong;
        }
        return edges;
    }

    private void head(@Nullable String wire) throws IOException {
        CsvRecord head = row();
        if (head == null) {
            throw new IOException(file + ": it is empty");
        }
        boolean isNamed = time(head.getField(0)).isEmpty();
        List<String> names = new ArrayList<>();
        for (int i = 1; i < head.getFieldCount(); i++) {
            names.add(isNamed ? head.getField(i).strip() : String.valueOf(i));
        }
        column = 1 + Wires.choose(file, names, wire);
        ahead = isNamed ? null : head;
    }

    @Override
    public boolean next() throws IOException {
        CsvRecord row = ahead == null ? row() : ahead;
        ahead = null;
        if (row == null) {
            return false;
        }
        Optional<Long> at = time(row.getField(0));
        String text = column < row.getFieldCount() ? row.getField(column).strip() : "";
        if (at.isEmpty() || !(text.equals("0") || text.equals("1"))) {
            throw new IOException(file + ":" + row.getStartingLineNumber() + ": found '"
                    + String.join(",", row.getFields())
                    + "', expected the time in seconds and levels 0 or 1, as in 0.001250,0");
        }
        if (at.get() < nanos) {
            throw new IOException(file + ":" + row.getStartingLineNumber() + ": its time lies before that of the row"
                    + " above; rows must be in the order of time");
        }
        nanos = at.get();
        level = text.equals("0") ? 0 : 1;
        return true;
    }

    private @Nullable CsvRecord row() throws IOException {
        try {
            return rows.hasNext() ? rows.next() : null;
        } catch (CsvParseException wrong) {
            throw new IOException(file + ": " + wrong.getMessage(), wrong);
        }
    }

    private static Optional<Long> time(String seconds) {
        try {
            return Optional.of(new BigDecimal(seconds.strip())
                    .movePointRight(NANOS_DIGITS)
                    .setScale(0, RoundingMode.HALF_UP)
                    .longValueExact());
        } catch (ArithmeticException | NumberFormatException noNumber) {
            return Optional.empty();
        }
    }

    @Override
    public long nanos() {
        return nanos;
    }

    @Override
    public int level() {
        return level;
    }

    @Override
    public void close() throws IOException {
        rows.close();
        reader.close();
    }
}
