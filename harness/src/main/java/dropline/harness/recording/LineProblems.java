package dropline.harness.recording;

import dropline.harness.problem.Problem;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What can be wrong with a line of a recording that is text, in words. */
final class LineProblems {
    private final String file;

    LineProblems(String file) {
        this.file = file;
    }

    Problem noColumns(long line, List<String> names) {
        return at(
                line,
                1,
                "",
                "NO_COLUMNS",
                shortened(String.join(" ", names)),
                "names parted by comma, semicolon or tab: time, then a column per signal",
                "name the recording itself, with its header as the first line");
    }

    Problem noHeader(long line, List<String> names) {
        return at(
                line,
                1,
                "",
                "NO_HEADER",
                shortened(String.join(" ", names)),
                "the columns' names",
                "put a line with the columns' names first");
    }

    Problem duplicate(long line, int column, String name, int field, int first) {
        return at(
                line,
                column,
                name,
                "DUPLICATE_COLUMN",
                "field " + field,
                "a name of its own; field " + first + " has this one",
                "rename one of them");
    }

    Problem tooManyColumns(long line, int number) {
        return at(
                line,
                1,
                "",
                "TOO_MANY_COLUMNS",
                number + " columns",
                "at most " + CompactFormat.MOST_COLUMNS,
                "split the recording");
    }

    Problem ragged(long line, int fields, int expected) {
        return at(
                line,
                0,
                "",
                "RAGGED_ROW",
                fields + " fields",
                expected + " fields, as in the header",
                "look for a lost separator or a row cut short");
    }

    Problem noTime(long line) {
        return at(line, 1, "time", "NO_TIME", "an empty field", "a time in every row", null);
    }

    Problem badTime(long line, int column, String found) {
        return at(line, column, "time", "NOT_A_TIME", found, "a number, in the unit that the header names", null);
    }

    Problem timeOutOfRange(long line, int column, String found) {
        return at(line, column, "time", "OUT_OF_RANGE", found, "at most 146 years from 0, either way", null);
    }

    Problem backwards(long line, String found, long lastNanos, long lastLine) {
        return at(
                line,
                1,
                "time",
                "TIME_BACKWARDS",
                found,
                "at least " + RecordingProblems.seconds(lastNanos) + ", the time of line " + lastLine,
                "sort the rows by time, or part recordings that were put one behind the other");
    }

    Problem cell(CellParser.Kind kind, long line, int column, String name, String found, char mark) {
        return switch (kind) {
            case NOT_FINITE ->
                at(line, column, name, "NOT_FINITE", found, "a finite number, or an empty field for no change", null);
            case OTHER_MARK ->
                at(
                        line,
                        column,
                        name,
                        "OTHER_DECIMAL_MARK",
                        found,
                        "'" + mark + "' as decimal mark, as in the cells before",
                        "write all numbers the same way, without marks between thousands");
            default ->
                at(
                        line,
                        column,
                        name,
                        "NOT_A_NUMBER",
                        found,
                        "a number, true/false, on/off, yes/no, or an empty field for no change",
                        null);
        };
    }

    Problem notAPosition(long line, int column, String control, String found) {
        return at(line, column, CsvHeader.CONTROL + control, "NOT_A_POSITION", found, "a whole number", null);
    }

    Problem malformed(long line, String found) {
        return at(
                line,
                0,
                "",
                "MALFORMED_CSV",
                found,
                "fields as RFC 4180 has them: a quote begins and ends a field, one inside stands twice",
                "look for a lost quote from this line on");
    }

    Problem noTimeKey(long line, String found) {
        return at(
                line,
                1,
                "time",
                "NO_TIME",
                found,
                "a key that begins with time, such as time_s, in every object",
                "write the time into every line");
    }

    Problem notAName(long line, int column, String found) {
        return at(
                line,
                column,
                "",
                "NOT_A_NAME",
                found,
                "a name of visible characters, in UTF-8 (or UTF-16 with its byte order mark)",
                "look at what wrote the recording, and in which encoding");
    }

    Problem namedTwice(long line, int column, String name) {
        return at(
                line,
                column,
                name,
                "DUPLICATE_NAME",
                "a second value",
                "one value for each name in a line",
                "rename one of them");
    }

    Problem malformedJson(long line, int column, String found) {
        return at(
                line,
                column,
                "",
                "MALFORMED_JSON",
                found,
                "one JSON object, whole, in each line (RFC 8259)",
                "look for a lost quote, comma or brace, or a line cut short; an object may not take several lines");
    }

    Problem lineTooLong(long line) {
        return at(
                line,
                0,
                "",
                "LINE_TOO_LONG",
                "more than " + TextLines.LONGEST + " characters",
                "an object a line",
                "look for lost line ends");
    }

    /** A number in as few digits as it needs. */
    static String number(double value) {
        StringBuilder text = new StringBuilder();
        Decimals.append(text, value);
        return text.toString();
    }

    /** A field as typed, cut to a length that can be read. */
    static String shortened(String text) {
        return text.length() <= 60 ? text : text.substring(0, 57) + "...";
    }

    private Problem at(
            long line,
            int column,
            String key,
            String code,
            String found,
            @Nullable String expected,
            @Nullable String fix) {
        return new Problem(file, (int) Math.min(line, Integer.MAX_VALUE), column, key, code, found, expected, fix);
    }
}
