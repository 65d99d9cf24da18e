package dropline.harness.verdict;

/**
 * What was replayed.
 *
 * @param name for people: the file's name, or that it was a described load
 * @param durationNanos how long, ns
 */
public record Recording(String name, long durationNanos) {
    public Recording {
        if (durationNanos < 0) {
            throw new IllegalArgumentException("duration must not be negative: durationNanos=" + durationNanos);
        }
    }
}
