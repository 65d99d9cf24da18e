package dropline.harness.problem;

import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * One thing wrong with a file a person wrote. Prints as
 *
 * <pre>
 * left.yaml:14:16: reply-gap: OUT_OF_RANGE
 *   found:    20us
 *   expected: at least 87us, one character at 115200 baud (line 3)
 *   fix:      write reply-gap: 2ms, or raise the baud rate
 * </pre>
 *
 * @param file as the person named it
 * @param line counted from 1; 0 where the problem is with the file as a whole
 * @param column counted from 1 in characters; 0 where the problem is with the line or the file as a whole
 * @param key the key, column name or part concerned; empty if none
 * @param code a stable word in capitals: {@code OUT_OF_RANGE}
 * @param found what stands there, exactly as typed; null where nothing does
 * @param expected what would be right, with units; null where there is no saying
 * @param fix what to do; null where {@code expected} says it all
 */
public record Problem(
        String file,
        int line,
        int column,
        String key,
        String code,
        @Nullable String found,
        @Nullable String expected,
        @Nullable String fix) {

    private static final Pattern CODE = Pattern.compile("[A-Z][A-Z0-9]*(_[A-Z0-9]+)*");

    public Problem {
        if (line < 0 || column < 0 || (line == 0 && column > 0)) {
            throw new IllegalArgumentException(
                    "line and column count from 1, 0 for none: line=" + line + " column=" + column);
        }
        if (!CODE.matcher(code).matches()) {
            throw new IllegalArgumentException("a code is words in capitals: code=" + code);
        }
    }

    /** Where it is: {@code left.yaml:14:16}, or without what is not known. */
    public String where() {
        return file + (line == 0 ? "" : ":" + line) + (column == 0 ? "" : ":" + column);
    }

    /** The whole message, up to four lines, without an end of line after the last. */
    public String text() {
        StringBuilder text = new StringBuilder(where()).append(": ");
        if (!key.isEmpty()) {
            text.append(key).append(": ");
        }
        text.append(code);
        line(text, "found:    ", found);
        line(text, "expected: ", expected);
        line(text, "fix:      ", fix);
        return text.toString();
    }

    @Override
    public String toString() {
        return text();
    }

    private static void line(StringBuilder text, String label, @Nullable String what) {
        if (what != null) {
            text.append("\n  ").append(label).append(what);
        }
    }
}
