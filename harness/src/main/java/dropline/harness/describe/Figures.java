package dropline.harness.describe;

import dropline.bus.chance.Distribution;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;

/** Figures as a person reads them: few digits, a unit, the same on every machine. */
final class Figures {
    private static final MathContext SIX_DIGITS = new MathContext(6);
    private static final MathContext NINE_DIGITS = new MathContext(9);

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

    /** A number as it is, to nine digits, with an exponent only where it is very large or small; nothing for NaN. */
    static String value(double value) {
        if (value != 0 && (Math.abs(value) >= 1e15 || Math.abs(value) < 1e-9)) {
            return Double.toString(digits(value, 9));
        }
        return Double.isNaN(value) ? "" : plain(new BigDecimal(value).round(NINE_DIGITS));
    }

    /** A number rounded to so many digits. */
    static double digits(double value, int digits) {
        return new BigDecimal(value).round(new MathContext(digits)).doubleValue();
    }

    /** A time in seconds, to the millisecond. */
    static String seconds(long nanos) {
        return plain(BigDecimal.valueOf(nanos, 9).setScale(3, RoundingMode.HALF_UP)) + " s";
    }

    private static String plain(BigDecimal number) {
        return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
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
