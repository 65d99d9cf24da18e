package dropline.harness.recording;

import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.core.json.JsonReadFeature;

/**
 * Takes apart the JSON object that is a line. Wide, each key but the time's is a name; long, one key holds the name and
 * {@code value} its value. Names inside names are joined by points, items of a list are counted from 1. The first
 * object with a key for the time decides which key that is.
 */
final class JsonObject {
    private static final JsonFactory JSON = JsonFactory.builder()
            // so that what is not finite is told from what is no JSON
            .enable(JsonReadFeature.ALLOW_NON_NUMERIC_NUMBERS)
            .build();

    private final LineProblems problems;
    private final CellParser parser = new CellParser();
    private final @Nullable TimeUnit told;
    private @Nullable String timeKey;
    private TimeUnit unit;
    private @Nullable String named;
    private int namedColumn;
    private double value;
    private boolean valued;

    JsonObject(LineProblems problems, @Nullable TimeUnit told) {
        this.problems = problems;
        this.told = told;
        this.unit = told == null ? TimeUnit.SECONDS : told;
    }

    TimeUnit unit() {
        return unit;
    }

    /** Takes apart the first {@code length} characters. */
    void take(char[] characters, int length, NamedLine line) {
        named = null;
        valued = false;
        try (JsonParser in = JSON.createParser(ObjectReadContext.empty(), characters, 0, length)) {
            if (in.nextToken() != JsonToken.START_OBJECT) {
                malformed(line, characters, length, 1);
                return;
            }
            object(in, "", line);
            if (in.nextToken() != null) {
                malformed(line, characters, length, column(in));
                return;
            }
        } catch (JacksonException e) {
            malformed(
                    line,
                    characters,
                    length,
                    e.getLocation() == null ? 1 : e.getLocation().getColumnNr());
            return;
        }
        understand(line);
    }

    private void understand(NamedLine line) {
        if (named != null && valued) {
            // other keys of a long line say something about it, and are no signals
            line.dropValues();
            line.problems.removeIf(
                    problem -> !problem.key().equals("time") && !problem.key().equals("value"));
            line.add(named, value, namedColumn);
        } else {
            line.whole = true;
            if (named != null) {
                line.problems.add(
                        problems.cell(CellParser.Kind.NOT_A_NUMBER, line.line, namedColumn, "", named, parser.mark()));
            }
        }
        if (!line.timed && line.problems.isEmpty()) {
            line.problems.add(problems.noTimeKey(line.line, keys(line)));
        }
    }

    private static String keys(NamedLine line) {
        StringBuilder keys = new StringBuilder();
        for (int i = 0; i < line.count() && keys.length() < 60; i++) {
            keys.append(keys.isEmpty() ? "" : ", ").append(line.name(i));
        }
        return keys.isEmpty() ? "no key" : LineProblems.shortened(keys.toString());
    }

    private void object(JsonParser in, String path, NamedLine line) {
        while (in.nextToken() == JsonToken.PROPERTY_NAME) {
            String key = in.currentName();
            int column = column(in);
            JsonToken token = in.nextToken();
            if (path.isEmpty() && isTime(key)) {
                time(in, token, line);
            } else if (!path.isEmpty() || !role(in, key, token, column)) {
                value(in, token, path.isEmpty() ? key.strip() : path + "." + key.strip(), column, line);
            }
        }
    }

    private void value(JsonParser in, JsonToken token, String name, int column, NamedLine line) {
        if (token == JsonToken.START_OBJECT) {
            object(in, name, line);
        } else if (token == JsonToken.START_ARRAY) {
            int item = 1;
            for (JsonToken next = in.nextToken(); next != JsonToken.END_ARRAY; next = in.nextToken()) {
                value(in, next, name + "." + item++, column, line);
            }
        } else {
            CellParser.Kind kind = kind(in, token);
            if (kind == CellParser.Kind.NUMBER || kind == CellParser.Kind.MISSING) {
                line.add(name, number(token, kind), column);
            } else {
                line.problems.add(problems.cell(kind, line.line, column(in), name, text(in), parser.mark()));
            }
        }
    }

    /** Takes the keys of a long line; whether it was one. */
    private boolean role(JsonParser in, String key, JsonToken token, int column) {
        String word = key.toLowerCase(Locale.ROOT);
        if (token == JsonToken.VALUE_STRING && LongHeader.isName(word) && named == null) {
            String name = in.getString().strip();
            named = LongHeader.isControl(word) && !NameBook.isControl(name) ? CsvHeader.CONTROL + name : name;
            namedColumn = column;
            return true;
        }
        if (LongHeader.isValue(word) && token.isScalarValue() && !valued) {
            CellParser.Kind kind = kind(in, token);
            valued = true;
            value = kind == CellParser.Kind.NUMBER ? number(token, kind) : Double.NaN;
        }
        return false;
    }

    private boolean isTime(String key) {
        if (timeKey == null && TimeHeader.isTime(key)) {
            timeKey = key;
            TimeUnit said = TimeHeader.unit(key);
            unit = told != null ? told : said != null ? said : TimeUnit.SECONDS;
        }
        return key.equals(timeKey);
    }

    private void time(JsonParser in, JsonToken token, NamedLine line) {
        if (!token.isScalarValue()) {
            line.problems.add(problems.badTime(line.line, column(in), "an object or a list"));
            in.skipChildren();
            return;
        }
        CellParser.Kind kind =
                token.isNumeric() || token == JsonToken.VALUE_STRING ? kind(in, token) : CellParser.Kind.NOT_A_NUMBER;
        if (kind == CellParser.Kind.MISSING) {
            return;
        }
        line.timed = true;
        line.time = text(in);
        line.nanos = kind == CellParser.Kind.NUMBER ? parser.nanos(TimeUnit.NANOSECONDS.convert(1, unit)) : 0;
        if (kind != CellParser.Kind.NUMBER) {
            line.problems.add(problems.badTime(line.line, column(in), line.time));
        } else if (line.nanos == Long.MIN_VALUE) {
            line.problems.add(problems.timeOutOfRange(line.line, column(in), line.time));
        }
    }

    private CellParser.Kind kind(JsonParser in, JsonToken token) {
        return switch (token) {
            case VALUE_TRUE, VALUE_FALSE -> CellParser.Kind.NUMBER;
            case VALUE_NULL -> CellParser.Kind.MISSING;
            default -> parser.parse(in.getStringCharacters(), in.getStringOffset(), in.getStringLength());
        };
    }

    private double number(JsonToken token, CellParser.Kind kind) {
        return switch (token) {
            case VALUE_TRUE -> 1;
            case VALUE_FALSE -> 0;
            default -> kind == CellParser.Kind.NUMBER ? parser.value() : Double.NaN;
        };
    }

    private void malformed(NamedLine line, char[] characters, int length, int column) {
        line.dropValues();
        line.problems.clear();
        int at = Math.max(1, Math.min(column, length + 1));
        String rest = LineProblems.shortened(new String(characters, at - 1, length - at + 1).strip());
        line.problems.add(problems.malformedJson(line.line, at, rest.isEmpty() ? "the end of the line" : rest));
    }

    private static String text(JsonParser in) {
        return LineProblems.shortened(in.getString().strip());
    }

    private static int column(JsonParser in) {
        return Math.max(0, in.currentTokenLocation().getColumnNr());
    }
}
