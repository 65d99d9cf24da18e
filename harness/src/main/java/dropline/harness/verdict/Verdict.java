package dropline.harness.verdict;

/**
 * A rule's outcome, with what it rests on.
 *
 * @param outcome pass, fail or undecided; what lost something fails whatever its value
 * @param rule what was judged, for people
 * @param valueNanos the figure that was judged, ns; 0 when undecided
 * @param limitNanos the limit it was judged against, ns; a value equal to it passes
 * @param uncertainty how far the value can be trusted, for people
 * @param evidence what the value was taken from, for people
 */
public record Verdict(
        Outcome outcome, String rule, long valueNanos, long limitNanos, String uncertainty, String evidence) {
    public Verdict {
        if (valueNanos < 0 || limitNanos <= 0) {
            throw new IllegalArgumentException("value must not be negative and limit above 0: valueNanos=" + valueNanos
                    + " limitNanos=" + limitNanos);
        }
        if (outcome == Outcome.PASS && valueNanos > limitNanos) {
            throw new IllegalArgumentException("a value beyond its limit cannot pass: outcome=" + outcome
                    + " valueNanos=" + valueNanos + " limitNanos=" + limitNanos);
        }
    }

    /** What is left of the limit, ns; negative by how much it is missed. The whole limit when undecided. */
    public long marginNanos() {
        return limitNanos - valueNanos;
    }
}
