package dropline.harness.capture;

/** How finely a waveform file counts time. */
public enum Resolution {
    MICROSECOND("1us", "1 us", 1_000),
    HUNDRED_NANOSECONDS("100ns", "100 ns", 100),
    NANOSECOND("1ns", "1 ns", 1);

    private final String word;
    private final String timescale;
    private final long nanos;

    Resolution(String word, String timescale, long nanos) {
        this.word = word;
        this.timescale = timescale;
        this.nanos = nanos;
    }

    /** As written on a command line. */
    public String word() {
        return word;
    }

    /** One step, ns. */
    public long nanos() {
        return nanos;
    }

    /** As a waveform file names it. */
    String timescale() {
        return timescale;
    }

    /** Steps, rounded to the nearest; ns. */
    long steps(long sinceNanos) {
        return (sinceNanos + nanos / 2) / nanos;
    }

    /** Whether bits of this rate can be told apart: two steps a bit at least. */
    public boolean shows(int baud) {
        return 2L * nanos * baud <= 1_000_000_000L;
    }
}
