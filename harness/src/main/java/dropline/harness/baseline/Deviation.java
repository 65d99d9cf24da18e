package dropline.harness.baseline;

import org.jspecify.annotations.Nullable;

/**
 * Something that is no more as it was accepted.
 *
 * @param run its name in the suite
 * @param figure null where the subject is new or gone
 * @param was accepted; 0 for something new
 * @param is now; 0 for something gone
 * @param strength how far beyond what chance could do: 1 is just beyond; 0 for something new or gone
 */
public record Deviation(
        String run,
        Subject subject,
        @Nullable Figure figure,
        Standing standing,
        double was,
        double is,
        double strength) {

    /** What has become of it. */
    public enum Standing {
        WORSE,
        GONE,
        BETTER,
        NEW,
        OTHER
    }

    /** Whether it is worse or gone. */
    public boolean isBad() {
        return standing == Standing.WORSE || standing == Standing.GONE;
    }
}
