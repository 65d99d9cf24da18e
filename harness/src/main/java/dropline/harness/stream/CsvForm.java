package dropline.harness.stream;

import dropline.harness.recording.CellParser;
import java.util.Arrays;

/**
 * {@code 1204.5,1,0}: one value a field, always in the same order. A line without any number names the fields; where
 * none has come, they are {@code c1}, {@code c2} and so on.
 */
final class CsvForm implements Form {
    private static final char[] SEPARATORS = {'\t', ';', ','};

    private final CellParser looking = new CellParser();
    private final char separator;
    private boolean named;
    private int[] columns = new int[0];
    private int fieldCount;
    private int[] from = new int[64];
    private int[] to = new int[64];

    private CsvForm(char separator) {
        this.separator = separator;
    }

    /** The form that fits this text: the mark that stands most often. */
    static CsvForm of(Message message) {
        char best = ' ';
        int most = 0;
        for (char candidate : SEPARATORS) {
            int count = 0;
            for (int i = 0; i < message.charCount(); i++) {
                count += message.chars()[i] == candidate ? 1 : 0;
            }
            if (count > most) {
                most = count;
                best = candidate;
            }
        }
        return new CsvForm(best);
    }

    @Override
    public String words() {
        return named
                ? "text, CSV with a header"
                : columns.length == 0
                        ? "text, CSV"
                        : "text, CSV without a header, its fields named c1 to c" + columns.length;
    }

    @Override
    public void read(Message message, Fields fields, StateSink sink) throws MalformedException {
        char[] chars = message.chars();
        int start = 0;
        for (int at = 0; at <= message.charCount(); at++) {
            if (at == message.charCount() || chars[at] == '\n' || chars[at] == '\r') {
                if (split(chars, start, at)) {
                    line(chars, fields, sink);
                }
                start = at + 1;
            }
        }
    }

    private void line(char[] chars, Fields fields, StateSink sink) throws MalformedException {
        int numbers = 0;
        int words = 0;
        for (int i = 0; i < fieldCount; i++) {
            CellParser.Kind kind = looking.parse(chars, from[i], to[i] - from[i]);
            words += kind == CellParser.Kind.NOT_A_NUMBER ? 1 : 0;
            numbers += kind == CellParser.Kind.NUMBER || kind == CellParser.Kind.OTHER_MARK ? 1 : 0;
        }
        if (numbers == 0 && words == fieldCount && fieldCount > 1) {
            header(chars, fields);
            return;
        }
        if (columns.length == 0) {
            if (numbers == 0) {
                throw new MalformedException("neither a number nor a row of names");
            }
            columns = new int[fieldCount];
            for (int i = 0; i < fieldCount; i++) {
                columns[i] = fields.names().number("c" + (i + 1));
            }
        }
        if (fieldCount != columns.length) {
            throw new MalformedException(fieldCount + " fields, not " + columns.length);
        }
        fields.state().clear();
        for (int i = 0; i < fieldCount; i++) {
            fields.text(columns[i], chars, from[i], to[i]);
        }
        if (!fields.state().isEmpty()) {
            sink.take(fields.state());
        }
    }

    private void header(char[] chars, Fields fields) {
        named = true;
        columns = new int[fieldCount];
        for (int i = 0; i < fieldCount; i++) {
            columns[i] = fields.names().number(chars, from[i], to[i]);
        }
    }

    /** Finds the fields of a line, without blanks and quotes around them; false if there are none. */
    private boolean split(char[] chars, int start, int end) {
        fieldCount = 0;
        int at = start;
        while (at < end && chars[at] <= ' ' && chars[at] != separator) {
            at++;
        }
        if (at == end) {
            return false;
        }
        boolean quoted = false;
        int begin = at;
        for (; at <= end; at++) {
            if (at == end || (chars[at] == separator && !quoted)) {
                field(chars, begin, at);
                begin = at + 1;
            } else if (chars[at] == '"') {
                quoted = !quoted;
            }
        }
        return true;
    }

    private void field(char[] chars, int begin, int end) {
        int first = begin;
        int last = end;
        while (first < last && chars[first] <= ' ') {
            first++;
        }
        while (last > first && chars[last - 1] <= ' ') {
            last--;
        }
        if (separator == ' ' && first == last) {
            return;
        }
        if (last - first >= 2 && chars[first] == '"' && chars[last - 1] == '"') {
            first++;
            last--;
        }
        if (fieldCount == from.length) {
            from = Arrays.copyOf(from, fieldCount * 2);
            to = Arrays.copyOf(to, fieldCount * 2);
        }
        from[fieldCount] = first;
        to[fieldCount++] = last;
    }
}
