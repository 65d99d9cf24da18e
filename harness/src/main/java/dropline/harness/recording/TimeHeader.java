package dropline.harness.recording;

import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The unit that a time column's name ends in, set apart by anything that is no letter: {@code time_s}, {@code t [ms]},
 * {@code time (us)}, {@code Elapsed seconds}.
 */
public final class TimeHeader {
    private static final Pattern LAST_WORD = Pattern.compile("(?:^|[^\\p{L}])(\\p{L}+)[^\\p{L}]*$");

    private TimeHeader() {}

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
