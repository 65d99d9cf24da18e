package dropline.harness.recording;

import de.siegmar.fastcsv.reader.CsvCallbackHandler;
import de.siegmar.fastcsv.reader.RecordType;

/** Takes the fields of a long CSV as they are found. A line stays as it is until the next but one. */
final class LongCsvFields extends CsvCallbackHandler<NamedLine> {
    private final LongHeader header;
    private final long unitNanos;
    private final LineProblems problems;
    private final CellParser parser = new CellParser();
    private NamedLine line = new NamedLine();
    private NamedLine other = new NamedLine();
    private int fields;
    private int column;
    private boolean empty;
    private boolean extraFields;
    private boolean handedOut;
    private String name = "";
    private int nameColumn;
    private double value;
    private CellParser.Kind valueKind = CellParser.Kind.MISSING;
    private String valueText = "";
    private int valueColumn;

    LongCsvFields(LongHeader header, long unitNanos, LineProblems problems) {
        this.header = header;
        this.unitNanos = unitNanos;
        this.problems = problems;
    }

    @Override
    protected void beginRecord(long startingLineNumber) {
        if (handedOut) {
            NamedLine next = other;
            other = line;
            line = next;
            handedOut = false;
        }
        line.clear(startingLineNumber);
        fields = 0;
        column = 1;
        line.blank = true;
        empty = false;
        extraFields = false;
        name = "";
        valueKind = CellParser.Kind.MISSING;
    }

    @Override
    protected void addField(char[] chars, int offset, int length, boolean quoted) {
        int begins = column + (quoted ? 1 : 0);
        column += length + (quoted ? 3 : 1);
        int field = fields++;
        if (field == header.time()) {
            time(begins, chars, offset, length);
        } else if (field == header.name()) {
            name = new String(chars, offset, length).strip();
            nameColumn = begins;
            line.blank &= name.isEmpty();
        } else if (field == header.value()) {
            value(begins, chars, offset, length);
        } else if (field >= header.fields()) {
            extraFields |= !new String(chars, offset, length).isBlank();
        }
    }

    private void time(int begins, char[] chars, int offset, int length) {
        CellParser.Kind kind = parser.parse(chars, offset, length);
        if (kind == CellParser.Kind.MISSING) {
            return;
        }
        line.blank = false;
        line.timed = true;
        line.time = text(chars, offset, length);
        line.nanos = kind == CellParser.Kind.NUMBER ? parser.nanos(unitNanos) : 0;
        if (kind != CellParser.Kind.NUMBER) {
            line.problems.add(problems.badTime(line.line, begins, line.time));
        } else if (line.nanos == Long.MIN_VALUE) {
            line.problems.add(problems.timeOutOfRange(line.line, begins, line.time));
        }
    }

    private void value(int begins, char[] chars, int offset, int length) {
        valueKind = parser.parse(chars, offset, length);
        valueColumn = begins;
        if (valueKind == CellParser.Kind.NUMBER) {
            value = parser.value();
        } else {
            valueText = text(chars, offset, length);
        }
        line.blank &= valueKind == CellParser.Kind.MISSING;
    }

    private static String text(char[] chars, int offset, int length) {
        return LineProblems.shortened(new String(chars, offset, length).strip());
    }

    @Override
    protected NamedLine buildRecord() {
        if (empty) {
            return line;
        }
        handedOut = true;
        if (fields < header.fields() || extraFields) {
            line.problems.clear();
            line.problems.add(problems.ragged(line.line, fields, header.fields()));
        } else if (name.isEmpty() && valueKind == CellParser.Kind.MISSING) {
            line.begins = true;
        } else if (name.isEmpty()) {
            line.problems.add(problems.notAName(line.line, nameColumn, "an empty field"));
        } else {
            named();
        }
        return line;
    }

    private void named() {
        String full = header.ofControls() && !NameBook.isControl(name) ? CsvHeader.CONTROL + name : name;
        switch (valueKind) {
            case NUMBER -> line.add(full, value, nameColumn);
            case MISSING -> line.add(full, Double.NaN, nameColumn);
            default ->
                line.problems.add(problems.cell(valueKind, line.line, valueColumn, full, valueText, parser.mark()));
        }
    }

    @Override
    protected RecordType getRecordType() {
        return empty ? RecordType.EMPTY : RecordType.DATA;
    }

    @Override
    protected int getFieldCount() {
        return fields;
    }

    @Override
    protected void setComment(char[] chars, int offset, int length) {
        throw new AssertionError("comments are not asked for");
    }

    @Override
    protected void setEmpty() {
        empty = true;
    }
}
