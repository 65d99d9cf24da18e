package dropline.harness.measure;

/**
 * Poll cycles over time, in at most {@link #MOST_POINTS} stretches of equal length, whatever the length of the run:
 * when it outgrows them, neighbours are joined.
 */
public final class CycleSeries {
    /** Most stretches kept. */
    public static final int MOST_POINTS = 300;

    private static final long FIRST_STRETCH_NANOS = 100_000_000L;

    private final long[] sums = new long[MOST_POINTS];
    private final long[] counts = new long[MOST_POINTS];
    private final long[] maxima = new long[MOST_POINTS];
    private long stretchNanos = FIRST_STRETCH_NANOS;

    void add(long startNanos, long cycleNanos) {
        while (startNanos / stretchNanos >= MOST_POINTS) {
            join();
        }
        int i = (int) (startNanos / stretchNanos);
        sums[i] += cycleNanos;
        counts[i]++;
        maxima[i] = Math.max(maxima[i], cycleNanos);
    }

    private void join() {
        for (int i = 0; i < MOST_POINTS; i++) {
            int left = 2 * i;
            boolean within = left < MOST_POINTS;
            sums[i] = within ? sums[left] + sums[left + 1] : 0;
            counts[i] = within ? counts[left] + counts[left + 1] : 0;
            maxima[i] = within ? Math.max(maxima[left], maxima[left + 1]) : 0;
        }
        stretchNanos *= 2;
    }

    /** Length of a stretch, ns; stretch {@code i} starts at {@code i} times that. */
    public long stretchNanos() {
        return stretchNanos;
    }

    /** How many cycles began in a stretch. */
    public long count(int stretch) {
        return counts[stretch];
    }

    /** Their mean, ns; 0 if there were none. */
    public long meanNanos(int stretch) {
        return counts[stretch] == 0 ? 0 : sums[stretch] / counts[stretch];
    }

    public long maxNanos(int stretch) {
        return maxima[stretch];
    }
}
