package dropline.harness.describe;

import dropline.bus.chance.Distribution;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;

/** Figures as a person reads them: few digits, a unit, the same on every machine. */
final class Figures {
    private static final MathContext SIX_DIGITS = new MathContext(6);

    private Figures() {}

    /** A time in the unit that suits it. */
    static String time(long nanos) {
        return time((double) nanos);
    }

    /** A time in the unit that suits it: {@code 20 us}, {@code 15.776 ms}, {@code 2 s}. */
    static String time(double nanos) {
        if (nanos < 1_000) {
            return number(nanos) + " ns";
        }
        if (nanos < 1_000_000) {
            return number(nanos / 1e3) + " us";
        }
        return nanos < 1_000_000_000 ? number(nanos / 1e6) + " ms" : number(nanos / 1e9) + " s";
    }

    /** A share of one as per cent with two decimals. */
    static String percent(double share) {
        return BigDecimal.valueOf(share * 100).setScale(2, RoundingMode.HALF_UP).toPlainString() + " %";
    }

    /** A number with at most three decimals and six digits, without trailing zeros. */
    static String number(double value) {
        BigDecimal rounded = new BigDecimal(value)
                .round(SIX_DIGITS)
                .setScale(3, RoundingMode.HALF_UP)
                .stripTrailingZeros();
        return rounded.signum() == 0 ? "0" : rounded.toPlainString();
    }

    /** A random time, as a pit file would write it. */
    static String random(Distribution time) {
        return switch (time.shape()) {
            case CONSTANT -> time(time.baseNanos());
            case UNIFORM -> time(time.baseNanos()) + ".." + time((double) time.baseNanos() + time.spreadNanos());
            case EXPONENTIAL ->
                time(time.baseNanos()) + " + exp. " + time(time.spreadNanos())
                        + (time.maxNanos() == Long.MAX_VALUE ? "" : ", at most " + time(time.maxNanos()));
        };
    }

    /** A count and its noun: {@code 1 node}, {@code 29 nodes}. */
    static String count(int count, String noun) {
        return count + " " + noun + (count == 1 ? "" : "s");
    }

    /** The name of a constant as words: {@code CHARACTER_LCD} as {@code character lcd}. */
    static String words(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
