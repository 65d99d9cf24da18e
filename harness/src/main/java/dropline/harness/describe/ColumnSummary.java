package dropline.harness.describe;

import dropline.harness.recording.ColumnUnit;

/**
 * What a recording shows of one column.
 *
 * @param name as in the recording
 * @param least NaN if no value is known anywhere
 * @param greatest see least
 * @param changes how often its value differs from the one before
 * @param perSecond changes a second, over the whole recording
 * @param largestJump largest difference from one value to the next, to nine digits; 0 if there is none
 * @param smallestStep smallest difference, to six digits; 0 if there is none
 * @param kind what it looks like
 * @param wraps whether it looks like a heading, whose greatest value is its least again
 */
public record ColumnSummary(
        String name,
        double least,
        double greatest,
        long changes,
        double perSecond,
        double largestJump,
        double smallestStep,
        Kind kind,
        boolean wraps) {

    /** What a column looks like, each by one rule. */
    public enum Kind {
        /** It has one value, or none. */
        NEVER_MOVES,
        /** Nothing but whole numbers, at most {@link ColumnFold#MOST_POSITIONS} of them, none beyond 100 either way. */
        SWITCH,
        /** A change is, on average, a twentieth of its range or less, and comes every ten seconds or more often. */
        NEEDLE,
        /** Anything else: it jumps. */
        DIGITS
    }

    /** The unit that the name carries, {@code deg} for a heading; empty if there is no telling. */
    public String unit() {
        return ColumnUnit.of(name).map(found -> found.unit().word()).orElse(wraps ? "deg" : "");
    }
}
