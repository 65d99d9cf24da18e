package dropline.harness.pitfile;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Lengths of time as people type them on a command line: {@code 90s}, {@code 2m30s}, {@code 600 s}, {@code 1h},
 * {@code 250ms}; in ns. Parts come in order, each unit at most once.
 */
public final class Lengths {
    private static final Pattern PART = Pattern.compile("\\s*([0-9]+(?:\\.[0-9]+)?)\\s*(h|min|ms|us|ns|m|s)\\s*");

    private Lengths() {}

    /** The length, ns; empty where the text is none, or one too long for a long. */
    public static OptionalLong nanos(String text) {
        Matcher part = PART.matcher(text.toLowerCase(Locale.ROOT));
        BigDecimal nanos = BigDecimal.ZERO;
        int at = 0;
        long last = Long.MAX_VALUE;
        while (at < text.length() && part.find(at) && part.start() == at) {
            long unit = unitNanos(part.group(2));
            if (unit >= last) {
                return OptionalLong.empty();
            }
            last = unit;
            nanos = nanos.add(new BigDecimal(part.group(1)).multiply(BigDecimal.valueOf(unit)));
            at = part.end();
        }
        boolean whole = at > 0 && at == text.length() && nanos.compareTo(BigDecimal.valueOf(Long.MAX_VALUE)) <= 0;
        return whole ? OptionalLong.of(nanos.toBigInteger().longValueExact()) : OptionalLong.empty();
    }

    private static long unitNanos(String unit) {
        return switch (unit) {
            case "h" -> 3_600_000_000_000L;
            case "min", "m" -> 60_000_000_000L;
            case "s" -> 1_000_000_000L;
            case "ms" -> 1_000_000L;
            case "us" -> 1_000L;
            case "ns" -> 1L;
            default -> throw new AssertionError(unit);
        };
    }
}
