package dropline.protocol;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Which firmware a node runs, as it says itself when asked.
 *
 * @param major 0..255
 * @param minor 0..255
 */
public record FirmwareVersion(int major, int minor) {
    private static final Pattern TEXT = Pattern.compile("(\\d{1,3})\\.(\\d{1,3})");
    private static final int MOST = 255;

    public FirmwareVersion {
        if (major < 0 || major > MOST || minor < 0 || minor > MOST) {
            throw new IllegalArgumentException(
                    "a firmware version must be 0.0 to 255.255: major=" + major + " minor=" + minor);
        }
    }

    /** Reads {@code 1.4}; empty if it is none. */
    public static Optional<FirmwareVersion> parse(String text) {
        Matcher matcher = TEXT.matcher(text);
        if (!matcher.matches()) {
            return Optional.empty();
        }
        int major = Integer.parseInt(matcher.group(1));
        int minor = Integer.parseInt(matcher.group(2));
        return major > MOST || minor > MOST ? Optional.empty() : Optional.of(new FirmwareVersion(major, minor));
    }

    @Override
    public String toString() {
        return major + "." + minor;
    }
}
