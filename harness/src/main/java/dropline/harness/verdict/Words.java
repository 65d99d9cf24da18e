package dropline.harness.verdict;

import java.util.List;
import java.util.Locale;

/** Figures as people read them. */
public final class Words {
    private Words() {}

    /** Three figures at least below a second: {@code 86.8 us}, {@code 38 ms}, {@code 61.3 ms}, {@code 1.25 s}. */
    public static String time(long nanos) {
        if (nanos < 1000) {
            return nanos + " ns";
        }
        if (nanos < 999_950) {
            return trimmed(nanos / 1e3, 1) + " us";
        }
        if (nanos < 999_950_000L) {
            return trimmed(nanos / 1e6, 1) + " ms";
        }
        return trimmed(nanos / 1e9, 2) + " s";
    }

    /** Minutes and seconds: {@code 12:10}. */
    public static String clock(long nanos) {
        long seconds = nanos / 1_000_000_000L;
        return seconds / 60 + ":" + (seconds % 60 < 10 ? "0" : "") + seconds % 60;
    }

    private static String trimmed(double value, int decimals) {
        String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
        if (decimals == 0) {
            return text;
        }
        while (text.contains(".") && text.endsWith("0")) {
            text = text.substring(0, text.length() - 1);
        }
        return text.endsWith(".") ? text.substring(0, text.length() - 1) : text;
    }

    /** A share of 0..1: {@code 34%}, {@code 0.4%}. */
    public static String share(double share) {
        return trimmed(share * 100, share < 0.1 ? 1 : 0) + "%";
    }

    /** {@code 1 panel}, {@code 3 panels}. */
    public static String count(long count, String thing) {
        return count + " " + thing + (count == 1 ? "" : "s");
    }

    /** {@code a}, {@code a and b}, {@code a, b and 4 more}. */
    public static String names(List<String> names, int most) {
        if (names.size() == 1) {
            return names.get(0);
        }
        int shown = names.size() <= most ? names.size() - 1 : most;
        String last = names.size() <= most ? names.get(names.size() - 1) : (names.size() - most) + " more";
        return String.join(", ", names.subList(0, shown)) + " and " + last;
    }

    /** A constant's name in small letters, with blanks. */
    static String of(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /** {@code 99 of 100 changes show within 38 ms, the slowest took 61 ms}. */
    static String latency(Latency latency) {
        if (latency.count() == 1) {
            return "the only change took " + time(latency.maxNanos());
        }
        return "99 of 100 changes show within " + time(latency.p99Nanos()) + ", the slowest took "
                + time(latency.maxNanos());
    }
}
