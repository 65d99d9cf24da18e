package dropline.harness.finding;

/** How often something was seen, from when to when, and how large: in constant space. */
final class Sightings {
    private static final long WINDOW_NANOS = 50_000_000L;

    private static final long INCIDENT_NANOS = 100_000_000L;

    private int count;
    private int incidents;
    private int windows;
    private long lastWindow = -1;
    private long firstNanos;
    private long lastNanos;
    private long least = Long.MAX_VALUE;
    private long most = Long.MIN_VALUE;
    private long sum;

    /** Notes one at an instant; amounts are in whatever unit the field they stand in says. */
    void add(long atNanos, long amount) {
        if (count == 0) {
            firstNanos = atNanos;
        }
        if (count++ == 0 || atNanos - lastNanos > INCIDENT_NANOS) {
            incidents++;
        }
        lastNanos = atNanos;
        least = Math.min(least, amount);
        most = Math.max(most, amount);
        sum += amount;
        if (atNanos / WINDOW_NANOS != lastWindow) {
            lastWindow = atNanos / WINDOW_NANOS;
            windows++;
        }
    }

    int count() {
        return count;
    }

    /** Groups of sightings more than 100 ms apart. */
    int incidents() {
        return incidents;
    }

    /** Stretches of 50 ms in which it was seen. */
    int windows() {
        return windows;
    }

    /** Those stretches as a share of all from the first sighting to the last: 1 for what never pauses. */
    double density() {
        return count == 0 ? 0 : (double) windows / (lastNanos / WINDOW_NANOS - firstNanos / WINDOW_NANOS + 1);
    }

    long firstNanos() {
        return firstNanos;
    }

    long lastNanos() {
        return lastNanos;
    }

    long least() {
        return least;
    }

    long most() {
        return most;
    }

    long sum() {
        return sum;
    }
}
