package dropline.harness.report;

import dropline.harness.verdict.AtWorst;
import dropline.harness.verdict.Outcome;
import java.math.BigDecimal;
import java.math.RoundingMode;

/** Figures as people read them; the same on every machine, whatever its language. */
public final class Figures {
    private static final long MICRO = 1_000L;
    private static final long MILLI = 1_000_000L;
    private static final long SECOND = 1_000_000_000L;

    private Figures() {}

    /** A bound as a time; {@code none} where there is none. */
    public static String atWorst(AtWorst bound) {
        return bound.isFinite() ? time(bound.nanos()) : "none";
    }

    /**
     * A length of time to about three figures: {@code 412 us}, {@code 3.42 ms}, {@code 61.3 ms}, {@code 100 ms}; ns.
     */
    public static String time(long nanos) {
        long size = Math.abs(nanos);
        if (size < MILLI) {
            return size == 0 ? "0 ms" : figures(nanos, MICRO, size < 10 * MICRO ? 1 : 0) + " us";
        }
        if (size < SECOND) {
            return figures(nanos, MILLI, size < 10 * MILLI ? 2 : 1) + " ms";
        }
        return figures(nanos, SECOND, size < 100 * SECOND ? 2 : 0) + " s";
    }

    /** A whole number of units without decimals, anything else with this many. */
    private static String figures(long nanos, long unit, int decimals) {
        return nanos % unit == 0 ? Long.toString(nanos / unit) : decimal((double) nanos / unit, decimals);
    }

    /** What is left of a limit, with its sign: {@code +38.7 ms}; ns. */
    public static String margin(long nanos) {
        return (nanos < 0 ? "-" : "+") + time(Math.abs(nanos));
    }

    /** An instant of a recording: {@code 4:07.120}, {@code 1:02:03.000}; ns. */
    public static String instant(long nanos) {
        long millis = Math.floorDiv(nanos + MILLI / 2, MILLI);
        long seconds = Math.floorDiv(millis, 1000L);
        String rest = padded(seconds % 60, 2) + "." + padded(Math.floorMod(millis, 1000L), 3);
        long minutes = seconds / 60;
        return minutes < 60 ? minutes + ":" + rest : minutes / 60 + ":" + padded(minutes % 60, 2) + ":" + rest;
    }

    /** A duration for people: {@code 10 min 12 s}; ns. */
    public static String duration(long nanos) {
        if (nanos < 10 * SECOND) {
            return time(nanos);
        }
        long seconds = (nanos + SECOND / 2) / SECOND;
        if (seconds < 120) {
            return seconds + " s";
        }
        long minutes = seconds / 60;
        String small = seconds % 60 == 0 ? "" : " " + seconds % 60 + " s";
        return minutes < 60
                ? minutes + " min" + small
                : minutes / 60 + " h" + (minutes % 60 == 0 ? "" : " " + minutes % 60 + " min") + small;
    }

    /** A share, 0..1: {@code 42.0%}. */
    public static String percent(double share) {
        return decimal(share * 100, 1) + "%";
    }

    /** A count with its thousands apart: {@code 15,776}. */
    public static String count(long value) {
        String digits = Long.toString(Math.abs(value));
        StringBuilder text = new StringBuilder(digits);
        for (int at = digits.length() - 3; at > 0; at -= 3) {
            text.insert(at, ',');
        }
        return value < 0 ? text.insert(0, '-').toString() : text.toString();
    }

    /** A number with this many decimals, halves away from zero. */
    public static String decimal(double value, int decimals) {
        return BigDecimal.valueOf(value)
                .setScale(decimals, RoundingMode.HALF_UP)
                .toPlainString();
    }

    /** An outcome in one word. */
    public static String word(Outcome outcome) {
        return switch (outcome) {
            case PASS -> "pass";
            case FAIL -> "FAIL";
            case UNDECIDED -> "undecided";
        };
    }

    /** One of something, or more: {@code 1 panel}, {@code 2 panels}. */
    public static String plural(long count, String one) {
        return count(count) + " " + one + (count == 1 ? "" : "s");
    }

    private static String padded(long value, int width) {
        String digits = Long.toString(value);
        return "0".repeat(Math.max(0, width - digits.length())) + digits;
    }
}
