package dropline.harness.finding;

import java.util.List;
import java.util.Locale;

/** Figures as people read them. */
final class Words {
    private Words() {}

    /** {@code 38 us}, {@code 1.25 s}. */
    static String time(long nanos) {
        long size = Math.abs(nanos);
        if (size < 1_000) {
            return nanos + " ns";
        }
        if (size < 1_000_000) {
            return trimmed(nanos / 1e3) + " us";
        }
        return size < 1_000_000_000L ? trimmed(nanos / 1e6) + " ms" : trimmed(nanos / 1e9) + " s";
    }

    /** {@code 38 us (9.5 bit times at 250000 baud)}. */
    static String bits(long nanos, int baud) {
        return time(nanos) + " (" + trimmed(nanos * (double) baud / 1e9) + " bit times at " + baud + " baud)";
    }

    /** {@code once at 1.2 s}, {@code 14 times from 1.2 s to 3 s}. */
    static String seen(Sightings sightings) {
        if (sightings.count() == 1) {
            return "once, at " + time(sightings.firstNanos());
        }
        return sightings.count() + " times from " + time(sightings.firstNanos()) + " to " + time(sightings.lastNanos());
    }

    /** {@code 3 of 40}. */
    static String of(long count, long all) {
        return count + " of " + all;
    }

    /** {@code a}, {@code a or b}, {@code a, b or c}. */
    static String either(List<String> words) {
        int last = words.size() - 1;
        return last == 0 ? words.get(0) : String.join(", ", words.subList(0, last)) + " or " + words.get(last);
    }

    private static String trimmed(double value) {
        int decimals = Math.abs(value) >= 99.95 ? 0 : Math.abs(value) >= 9.995 ? 1 : 2;
        String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
        while (text.contains(".") && (text.endsWith("0") || text.endsWith("."))) {
            text = text.substring(0, text.length() - 1);
        }
        return text;
    }
}
