package dropline.harness.describe;

import java.util.List;

/**
 * What a recording shows of itself.
 *
 * @param file as the person named it
 * @param firstNanos its first instant as recorded
 * @param lastNanos its last
 * @param unit in which its times stand: {@code s}; empty for the compact form
 * @param states how many rows it has
 * @param periodNanos from one state to the next in half of all cases at most; 0 for fewer than two states
 * @param pauses how often the next state takes more than five times that
 * @param longest the longest of them, longest first
 * @param skippedRows rows left out for being wrong
 * @param losses what was lost and could be read past, a sentence each
 */
public record RecordingSummary(
        String file,
        long firstNanos,
        long lastNanos,
        String unit,
        long states,
        long periodNanos,
        long pauses,
        List<Pause> longest,
        List<ColumnSummary> columns,
        List<ControlSummary> controls,
        long skippedRows,
        List<String> losses) {

    /** A time without states, from the one before it; ns after the recording's first instant. */
    public record Pause(long atNanos, long lastsNanos) {}

    /** How often a control moved, and between which positions; it begins at 0. */
    public record ControlSummary(String name, long moves, int least, int greatest) {}

    public RecordingSummary {
        longest = List.copyOf(longest);
        columns = List.copyOf(columns);
        controls = List.copyOf(controls);
        losses = List.copyOf(losses);
    }

    /** From its first instant to its last. */
    public long lastsNanos() {
        return lastNanos - firstNanos;
    }
}
