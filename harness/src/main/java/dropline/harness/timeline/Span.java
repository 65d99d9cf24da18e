package dropline.harness.timeline;

/**
 * A stretch of time.
 *
 * @param from ns
 * @param until ns, not before {@code from}
 */
record Span(long from, long until) {
    boolean touches(Span other) {
        return from < other.until && other.from < until;
    }

    Span common(Span other) {
        return new Span(Math.max(from, other.from), Math.min(until, other.until));
    }

    long nanos() {
        return until - from;
    }
}
