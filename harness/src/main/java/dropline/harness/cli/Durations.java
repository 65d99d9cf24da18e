package dropline.harness.cli;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * Reads a length of time as people type it: {@code 90s}, {@code 2m30s}, {@code 600 s}, {@code 1h}, {@code 250ms}; in
 * ns.
 */
final class Durations implements ITypeConverter<Long> {
    private static final Pattern PART = Pattern.compile("\\s*([0-9]+(?:\\.[0-9]+)?)\\s*(h|min|ms|us|m|s)\\s*");

    @Override
    public Long convert(String text) {
        return parseNanos(text);
    }

    static long parseNanos(String text) {
        Matcher part = PART.matcher(text.toLowerCase(Locale.ROOT));
        BigDecimal nanos = BigDecimal.ZERO;
        int at = 0;
        long last = Long.MAX_VALUE;
        while (at < text.length() && part.find(at) && part.start() == at) {
            long unit = unitNanos(part.group(2));
            if (unit >= last) {
                throw wrong(text);
            }
            last = unit;
            nanos = nanos.add(new BigDecimal(part.group(1)).multiply(BigDecimal.valueOf(unit)));
            at = part.end();
        }
        if (at == 0 || at < text.length()) {
            throw wrong(text);
        }
        try {
            return nanos.toBigInteger().longValueExact();
        } catch (ArithmeticException tooLong) {
            throw wrong(text);
        }
    }

    private static long unitNanos(String unit) {
        return switch (unit) {
            case "h" -> 3_600_000_000_000L;
            case "min", "m" -> 60_000_000_000L;
            case "s" -> 1_000_000_000L;
            case "ms" -> 1_000_000L;
            case "us" -> 1_000L;
            default -> throw new AssertionError(unit);
        };
    }

    private static TypeConversionException wrong(String text) {
        return new TypeConversionException(
                "'" + text + "' is no length of time; write it with its unit, as in 90s, 2m30s or 1h");
    }
}
