package dropline.harness.recording;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;

/**
 * Reads one cell at a time: a number with point or comma as decimal mark (one of them per file, the first seen), a word
 * for on or off, or nothing. Numbers become the nearest double; times become whole nanoseconds without passing through
 * one.
 */
public final class CellParser {
    /** What a cell turned out to be. */
    public enum Kind {
        NUMBER,
        /** Nothing but blanks: no change. */
        MISSING,
        NOT_A_NUMBER,
        NOT_FINITE,
        /** The other decimal mark than that of the file. */
        OTHER_MARK
    }

    /** Digits that a long holds whatever they are. */
    private static final int MOST_DIGITS = 18;

    private static final long EXACT = 1L << 53;

    private char mark;
    private char seenMark;
    private boolean word;
    private boolean exponent;
    private int digits;
    private int decimals;
    private long mantissa;
    private boolean negative;
    private String text = "";

    /** The decimal mark of the file; 0 as long as none was seen. */
    public char mark() {
        return mark;
    }

    public Kind parse(char[] chars, int offset, int length) {
        int from = offset;
        int to = offset + length;
        while (from < to && isBlank(chars[from])) {
            from++;
        }
        while (to > from && isBlank(chars[to - 1])) {
            to--;
        }
        if (from == to) {
            return Kind.MISSING;
        }
        if (!scan(chars, from, to)) {
            return word(new String(chars, from, to - from));
        }
        if (seenMark != 0 && mark != 0 && seenMark != mark) {
            return Kind.OTHER_MARK;
        }
        mark = mark == 0 ? seenMark : mark;
        text = digits > MOST_DIGITS || exponent ? new String(chars, from, to - from).replace(',', '.') : "";
        return Double.isInfinite(value()) ? Kind.NOT_FINITE : Kind.NUMBER;
    }

    /** The number parsed last. */
    public double value() {
        if (word) {
            return mantissa;
        }
        if (text.isEmpty() && mantissa <= EXACT && decimals <= Decimals.MOST) {
            double value = mantissa / Decimals.power(decimals);
            return negative ? -value : value;
        }
        return text.isEmpty() ? BigDecimal.valueOf(signed(), decimals).doubleValue() : Double.parseDouble(text);
    }

    /**
     * The number parsed last as a time.
     *
     * @param unitNanos the unit of the column, ns
     * @return ns, or {@code Long.MIN_VALUE} if beyond what a long of ns holds
     */
    public long nanos(long unitNanos) {
        if (word) {
            return mantissa * unitNanos;
        }
        BigDecimal exact = text.isEmpty() ? BigDecimal.valueOf(signed(), decimals) : new BigDecimal(text);
        long magnitude = (long) exact.precision() - exact.scale();
        if (exact.signum() == 0 || magnitude < -30) {
            return 0;
        }
        if (magnitude > 20) {
            return Long.MIN_VALUE;
        }
        BigDecimal nanos = exact.multiply(BigDecimal.valueOf(unitNanos)).setScale(0, RoundingMode.HALF_EVEN);
        boolean fits = nanos.abs().compareTo(BigDecimal.valueOf(Long.MAX_VALUE / 2)) <= 0;
        return fits ? nanos.longValueExact() : Long.MIN_VALUE;
    }

    /** Takes in sign, digits, mark, digits and exponent; false if that is not what stands there. */
    private boolean scan(char[] chars, int from, int to) {
        word = false;
        seenMark = 0;
        exponent = false;
        digits = 0;
        decimals = 0;
        mantissa = 0;
        negative = chars[from] == '-';
        int at = negative || chars[from] == '+' ? from + 1 : from;
        int before = at;
        for (; at < to; at++) {
            char c = chars[at];
            if (c >= '0' && c <= '9') {
                digits += digits > 0 || c != '0' ? 1 : 0;
                mantissa = mantissa * 10 + (c - '0');
                decimals += seenMark != 0 ? 1 : 0;
            } else if (seenMark == 0 && (c == '.' || c == ',')) {
                seenMark = c;
            } else {
                break;
            }
        }
        boolean hasDigits = at - before > (seenMark == 0 ? 0 : 1);
        digits = decimals > MOST_DIGITS ? MOST_DIGITS + 1 : digits;
        return hasDigits && (at == to || scanExponent(chars, at, to));
    }

    private boolean scanExponent(char[] chars, int from, int to) {
        exponent = true;
        int at = from + 1;
        if ((chars[from] != 'e' && chars[from] != 'E') || at == to) {
            return false;
        }
        at += chars[at] == '-' || chars[at] == '+' ? 1 : 0;
        int first = at;
        while (at < to && chars[at] >= '0' && chars[at] <= '9') {
            at++;
        }
        return at == to && at > first && at - first <= 6;
    }

    private Kind word(String cell) {
        switch (cell.toLowerCase(Locale.ROOT)) {
            case "true", "on", "yes" -> mantissa = 1;
            case "false", "off", "no" -> mantissa = 0;
            default -> {
                return notFinite(cell.toLowerCase(Locale.ROOT)) ? Kind.NOT_FINITE : Kind.NOT_A_NUMBER;
            }
        }
        word = true;
        return Kind.NUMBER;
    }

    private static boolean notFinite(String cell) {
        String unsigned = cell.startsWith("-") || cell.startsWith("+") ? cell.substring(1) : cell;
        return switch (unsigned) {
            case "nan", "inf", "infinity", "\u221E" -> true;
            default -> unsigned.startsWith("1.#") || unsigned.startsWith("nan(");
        };
    }

    private long signed() {
        return negative ? -mantissa : mantissa;
    }

    private static boolean isBlank(char c) {
        return c == ' ' || c == '\t' || c == '\u00A0';
    }
}
