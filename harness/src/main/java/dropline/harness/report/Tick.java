package dropline.harness.report;

import java.util.ArrayList;
import java.util.List;

/** A mark on an axis and what it says. */
public record Tick(double at, String text) {

    /** Marks at round times from 0 along an axis this long, about as many as wanted. */
    public static List<Tick> along(long endNanos, double length, int wanted) {
        long step = roundStep(Math.max(1, endNanos / wanted));
        List<Tick> ticks = new ArrayList<>();
        for (long at = 0; at <= endNanos; at += step) {
            ticks.add(new Tick(Math.round(10 * length * at / endNanos) / 10.0, label(at)));
        }
        return ticks;
    }

    /** The least of 1, 2, 5, 10, 20... (or a round number of seconds and minutes) at or above this; ns. */
    public static long roundStep(long nanos) {
        for (long power = 1; power <= 10_000_000_000L; power *= 10) {
            for (long digit : new long[] {1, 2, 5}) {
                if (digit * power >= nanos && digit * power <= 30_000_000_000L) {
                    return digit * power;
                }
            }
        }
        long minute = 60_000_000_000L;
        for (long minutes : new long[] {1, 2, 5, 10, 20, 30, 60, 120, 360, 720, 1440}) {
            if (minutes * minute >= nanos) {
                return minutes * minute;
            }
        }
        return (nanos / (1440 * minute) + 1) * 1440 * minute;
    }

    /** The shortest exact way to write a round time; ns. */
    static String label(long nanos) {
        if (nanos == 0) {
            return "0";
        }
        if (nanos % 60_000_000_000L == 0) {
            return nanos / 60_000_000_000L + " min";
        }
        if (nanos >= 1_000_000_000L) {
            return plain(nanos, 1_000_000_000L) + " s";
        }
        return nanos >= 1_000_000L ? plain(nanos, 1_000_000L) + " ms" : plain(nanos, 1_000L) + " us";
    }

    private static String plain(long nanos, long unit) {
        return nanos % unit == 0
                ? Long.toString(nanos / unit)
                : java.math.BigDecimal.valueOf(nanos)
                        .divide(java.math.BigDecimal.valueOf(unit))
                        .stripTrailingZeros()
                        .toPlainString();
    }
}
