package dropline.harness.recording;

import de.siegmar.fastcsv.reader.CsvCallbackHandler;
import de.siegmar.fastcsv.reader.RecordType;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/** Takes the fields of a wide CSV as they are found: the header's as names, those after it straight into numbers. */
final class CsvFields extends CsvCallbackHandler<CsvRow> {
    private final LineProblems problems;
    private final CellParser parser = new CellParser();
    private final List<String> names = new ArrayList<>();
    private final List<Integer> starts = new ArrayList<>();
    private @Nullable CsvHeader header;
    private int[] fields = new int[0];
    private long unitNanos;
    private CsvRow row = new CsvRow(0, 0);
    private CsvRow other = row;
    private int column;
    private boolean empty;
    private boolean handedOut;

    CsvFields(LineProblems problems) {
        this.problems = problems;
    }

    List<String> names() {
        return names;
    }

    /** Where the header's names begin in their line, counted from 1. */
    List<Integer> starts() {
        return starts;
    }

    /** Tells what the header means; all that follows is rows. A row stays as it is until the next but one. */
    void understood(CsvHeader understood) {
        header = understood;
        fields = understood.fields().stream().mapToInt(Integer::intValue).toArray();
        unitNanos = TimeUnit.NANOSECONDS.convert(1, understood.unit());
        row = new CsvRow(understood.columns().size(), understood.controls().size());
        other = new CsvRow(row.values.length, row.positions.length);
    }

    @Override
    protected void beginRecord(long startingLineNumber) {
        if (handedOut) {
            CsvRow next = other;
            other = row;
            row = next;
            handedOut = false;
        }
        row.clear(startingLineNumber);
        empty = false;
        column = 1;
    }

    @Override
    protected void addField(char[] chars, int offset, int length, boolean quoted) {
        int begins = column + (quoted ? 1 : 0);
        column += length + (quoted ? 3 : 1);
        int field = row.fields++;
        if (header == null) {
            names.add(new String(chars, offset, length));
            starts.add(begins);
            return;
        }
        CellParser.Kind kind = parser.parse(chars, offset, length);
        row.blank &= kind == CellParser.Kind.MISSING;
        if (field >= fields.length) {
            row.extraFields |= kind != CellParser.Kind.MISSING;
        } else if (field == 0) {
            time(kind, begins, chars, offset, length);
        } else if (kind != CellParser.Kind.MISSING && fields[field] != CsvHeader.NOTHING) {
            cell(header, kind, fields[field], begins, chars, offset, length);
        }
    }

    private void time(CellParser.Kind kind, int begins, char[] chars, int offset, int length) {
        if (kind == CellParser.Kind.MISSING) {
            return;
        }
        row.timed = true;
        row.time = text(chars, offset, length);
        if (kind != CellParser.Kind.NUMBER) {
            row.problems.add(problems.badTime(row.line, begins, row.time));
            return;
        }
        row.nanos = parser.nanos(unitNanos);
        if (row.nanos == Long.MIN_VALUE) {
            row.problems.add(problems.timeOutOfRange(row.line, begins, row.time));
        }
    }

    private void cell(
            CsvHeader understood, CellParser.Kind kind, int what, int begins, char[] chars, int offset, int length) {
        if (what >= 0) {
            row.stated = true;
            if (kind == CellParser.Kind.NUMBER) {
                row.values[what] = parser.value();
            } else {
                String name = understood.columns().get(what).name();
                row.problems.add(
                        problems.cell(kind, row.line, begins, name, text(chars, offset, length), parser.mark()));
            }
            return;
        }
        int control = -what - 1;
        double position = kind == CellParser.Kind.NUMBER ? parser.value() : Double.NaN;
        row.moved = true;
        row.positioned[control] = true;
        row.positions[control] = (int) position;
        if (row.positions[control] != position) {
            String name = understood.controls().get(control);
            row.problems.add(problems.notAPosition(row.line, begins, name, text(chars, offset, length)));
        }
    }

    private static String text(char[] chars, int offset, int length) {
        return LineProblems.shortened(new String(chars, offset, length).strip());
    }

    @Override
    protected RecordType getRecordType() {
        return empty ? RecordType.EMPTY : RecordType.DATA;
    }

    @Override
    protected int getFieldCount() {
        return row.fields;
    }

    @Override
    protected void setComment(char[] chars, int offset, int length) {
        throw new AssertionError("comments are not asked for");
    }

    @Override
    protected void setEmpty() {
        empty = true;
    }

    @Override
    protected CsvRow buildRecord() {
        handedOut = !empty;
        return row;
    }
}
