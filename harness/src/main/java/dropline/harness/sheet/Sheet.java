package dropline.harness.sheet;

import de.siegmar.fastcsv.reader.CloseableIterator;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import dropline.bus.pit.Panel;
import dropline.harness.problem.Problem;
import dropline.harness.problem.Problems;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * A spreadsheet of panels, one row a panel, saved as CSV. Rows that cannot be understood are left out and said; the
 * others are read.
 *
 * @param rows those understood, in the order of the file
 * @param leftOut lines, as written, of those that were not, for the builder not to lose them
 * @param notes heads of columns that were kept as notes, each with what it may have been meant to be
 * @param problems everything that could not be understood
 */
public record Sheet(List<Row> rows, List<String> leftOut, List<String> notes, List<Problem> problems) {
    /** Rows above the headings that may hold a title. */
    private static final int MOST_TITLE_ROWS = 10;

    public Sheet {
        rows = List.copyOf(rows);
        leftOut = List.copyOf(leftOut);
        notes = List.copyOf(notes);
        problems = List.copyOf(problems);
    }

    /** Reads a file. */
    public static Sheet read(Path file) throws IOException {
        return read(file.toString(), Files.readAllBytes(file));
    }

    /** Reads a file's bytes. */
    static Sheet read(String file, byte[] bytes) {
        return new Reading(file).sheet(SheetText.of(bytes));
    }

    /** One reading of a file. */
    private static final class Reading {
        private final String file;
        private final Problems problems = new Problems();
        private final List<Row> rows = new ArrayList<>();
        private final List<String> leftOut = new ArrayList<>();
        private final List<String> notes = new ArrayList<>();
        private final Map<String, Row> byAddress = new LinkedHashMap<>();

        Reading(String file) {
            this.file = file;
        }

        Sheet sheet(SheetText text) {
            Optional<String> binary = text.notText();
            if (binary.isPresent()) {
                String fix = "in the spreadsheet program, save the sheet as CSV and give that file";
                problem(0, 0, "", SheetCode.NO_TEXT, binary.get(), "a spreadsheet saved as CSV", fix);
            } else if (!read(text, Headings::areHeadings)
                    && problems.isEmpty()
                    && !read(text, Headings::mayBeHeadings)) {
                String expected = "a row of headings among the first: panel, and any of place, segment, address, board,"
                        + " shows, controls, draws, status";
                String fix =
                        "write the headings above the columns; their order is free, other columns are kept as notes";
                problem(0, 0, "", SheetCode.NO_HEADINGS, null, expected, fix);
            }
            return new Sheet(rows, leftOut, notes, problems.list());
        }

        /** Reads it, if one of its first rows holds headings. */
        private boolean read(SheetText text, Predicate<Headings> reads) {
            Headings headings = null;
            int titles = 0;
            int line = text.firstLine();
            try (CsvReader<CsvRecord> reader = CsvReader.builder()
                            .fieldSeparator(text.separator())
                            .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                            .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                            .skipEmptyLines(true)
                            .ofCsvRecord(text.text());
                    CloseableIterator<CsvRecord> records = reader.iterator()) {
                while (records.hasNext()) {
                    CsvRecord record = records.next();
                    line = Math.toIntExact(record.getStartingLineNumber()) + text.firstLine() - 1;
                    List<String> cells = record.getFields();
                    if (cells.stream().allMatch(String::isBlank)) {
                        continue;
                    }
                    if (!records.hasNext() && text.endsInQuotes()) {
                        openQuote(line, cells, text.separator());
                    } else if (headings != null) {
                        row(headings, line, cells, text.separator());
                    } else if (reads.test(new Headings(cells))) {
                        headings = new Headings(cells);
                        notes.addAll(headings.others());
                        mustBeSingle(headings, line);
                    } else if (++titles > MOST_TITLE_ROWS) {
                        break;
                    }
                }
            } catch (CsvParseException | IOException unreadable) {
                String why = String.valueOf(
                        unreadable.getCause() == null
                                ? unreadable.getMessage()
                                : unreadable.getCause().getMessage());
                problem(line, 0, "", SheetCode.UNREADABLE_ROW, why, "quotes that are closed", null);
            }
            return headings != null;
        }

        private void openQuote(int line, List<String> cells, char separator) {
            String expected = "a second quote that closes it; this row and all below it read as one cell";
            String fix = "save the sheet as CSV again, or add the quote; the rows are kept as a comment";
            problem(line, 0, "", SheetCode.UNREADABLE_ROW, "a quote that nothing closes", expected, fix);
            leftOut.add(asWritten(cells, separator));
        }

        private static String asWritten(List<String> cells, char separator) {
            return oneLine(String.join(separator + " ", cells));
        }

        private static String oneLine(String text) {
            return text.replaceAll("\\s+", " ");
        }

        private void mustBeSingle(Headings headings, int line) {
            Column doubled = headings.doubled();
            if (doubled != null) {
                String expected = "one column that tells the " + doubled.head();
                String fix = "rename one of the two; the first was read, the other is kept as a note";
                problem(line, 0, doubled.head(), SheetCode.DUPLICATE_HEADING, doubled.head(), expected, fix);
            }
        }

        private void row(Headings headings, int line, List<String> cells, char separator) {
            int before = problems.list().size();
            String panel = headings.cell(cells, Column.PANEL);
            if (panel.isEmpty()) {
                String expected = "the panel's name";
                wrong(headings, line, Column.PANEL, SheetCode.NO_PANEL_NAME, "nothing", expected);
            }
            Row row = new Row(
                    line,
                    oneLine(panel),
                    oneLine(headings.cell(cells, Column.PLACE)),
                    oneLine(headings.cell(cells, Column.SEGMENT)),
                    address(headings, line, cells),
                    oneLine(headings.cell(cells, Column.BOARD)),
                    parts(headings, line, cells, Column.SHOWS, Kinds.INDICATORS),
                    parts(headings, line, cells, Column.CONTROLS, Kinds.CONTROLS),
                    amps(headings, line, cells),
                    status(headings, line, cells),
                    headings.notes(cells));
            mustShareItsBoard(headings, row);
            if (problems.list().size() == before) {
                rows.add(row);
            } else {
                leftOut.add(asWritten(cells, separator));
            }
        }

        private OptionalInt address(Headings headings, int line, List<String> cells) {
            String cell = headings.cell(cells, Column.ADDRESS);
            OptionalInt address = Cells.address(cell);
            if (address.isEmpty() && !cell.isEmpty()) {
                wrong(
                        headings,
                        line,
                        Column.ADDRESS,
                        SheetCode.BAD_ADDRESS,
                        cell,
                        "a whole number, 1..247, or nothing");
            }
            return address;
        }

        private OptionalDouble amps(Headings headings, int line, List<String> cells) {
            String cell = headings.cell(cells, Column.DRAWS);
            OptionalDouble amps = Cells.amps(cell, headings.head(Column.DRAWS));
            if (amps.isEmpty() && !cell.isEmpty()) {
                String expected = "a current such as 350 mA or 0,35 A, or watts at 12 V such as 4 W, or nothing";
                wrong(headings, line, Column.DRAWS, SheetCode.BAD_CURRENT, cell, expected);
            }
            return amps;
        }

        private Panel.Status status(Headings headings, int line, List<String> cells) {
            String cell = headings.cell(cells, Column.STATUS);
            Optional<Panel.Status> status = Cells.status(cell);
            if (status.isEmpty()) {
                wrong(headings, line, Column.STATUS, SheetCode.BAD_STATUS, cell, "built, bench, planned, or nothing");
            }
            return status.orElse(Panel.Status.BUILT);
        }

        private List<Part> parts(Headings headings, int line, List<String> cells, Column column, Kinds kinds) {
            String cell = headings.cell(cells, column);
            Optional<List<Part>> parts = Cells.parts(cell, kinds);
            if (parts.isEmpty()) {
                String expected = "things with semicolons between them, at most 64 of a kind, such as: airspeed"
                        + " gauge; 3 gear lamps. Kinds: " + String.join(", ", kinds.names());
                wrong(headings, line, column, SheetCode.BAD_LIST, cell, expected);
            }
            return parts.orElse(List.of());
        }

        /** Two panels with the same address on a segment stand on one board, which can be only one kind of board. */
        private void mustShareItsBoard(Headings headings, Row row) {
            if (row.address().isEmpty()) {
                return;
            }
            String key = row.segmentOrPlace().toLowerCase(Locale.ROOT) + "\n"
                    + row.address().getAsInt();
            Row first = byAddress.putIfAbsent(key, row);
            if (first != null
                    && !first.board().isEmpty()
                    && !row.board().isEmpty()
                    && !first.board().equalsIgnoreCase(row.board())) {
                String expected = "an address of its own, or the board of " + first.panel() + " in line " + first.line()
                        + ", " + first.board() + ": panels with one address share one board";
                String found = row.address().getAsInt() + " on " + row.board();
                wrong(headings, row.line(), Column.ADDRESS, SheetCode.ADDRESS_CLASH, found, expected);
            }
        }

        private void wrong(Headings headings, int line, Column column, SheetCode code, String found, String expected) {
            String head = headings.has(column) ? headings.head(column) : column.head();
            String fix = "correct the cell; until then the row is left out, and kept as a comment";
            problem(line, headings.number(column), head, code, found, expected, fix);
        }

        private void problem(
                int line,
                int column,
                String key,
                SheetCode code,
                @Nullable String found,
                @Nullable String expected,
                @Nullable String fix) {
            problems.add(new Problem(file, line, column, key, code.name(), found, expected, fix));
        }
    }
}
