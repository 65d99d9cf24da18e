package dropline.harness.recording;

import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * What a time column's name tells: whether it is one, by its first word, and in which unit, by its last; words are set
 * apart by anything that is no letter: {@code time_s}, {@code t [ms]}, {@code time (us)}, {@code Elapsed seconds}.
 */
public final class TimeHeader {
    private static final Pattern LAST_WORD = Pattern.compile("(?:^|[^\\p{L}])(\\p{L}+)[^\\p{L}]*$");

    private static final Pattern FIRST_WORD = Pattern.compile("^[^\\p{L}]*(\\p{L}+)");

    private TimeHeader() {}

    /** Whether a name is that of a time, for forms in which the time may stand anywhere. */
    static boolean isTime(String name) {
        Matcher word = FIRST_WORD.matcher(name);
        return word.find()
                && switch (word.group(1).toLowerCase(Locale.ROOT)) {
                    case "time", "t", "timestamp", "elapsed" -> true;
                    default -> false;
                };
    }

    /** The unit, or null if the name ends in none. */
    public static @Nullable TimeUnit unit(String name) {
        Matcher word = LAST_WORD.matcher(name);
        if (!word.find()) {
            return null;
        }
        return switch (word.group(1).toLowerCase(Locale.ROOT)) {
            case "s", "sec", "secs", "second", "seconds" -> TimeUnit.SECONDS;
            case "ms", "msec", "millis", "millisecond", "milliseconds" -> TimeUnit.MILLISECONDS;
            case "us", "\u00B5s", "\u03BCs", "usec", "micros", "microsecond", "microseconds" -> TimeUnit.MICROSECONDS;
            case "ns", "nsec", "nanos", "nanosecond", "nanoseconds" -> TimeUnit.NANOSECONDS;
            default -> null;
        };
    }
}
