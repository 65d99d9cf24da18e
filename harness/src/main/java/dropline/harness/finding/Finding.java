package dropline.harness.finding;

import java.util.List;

/**
 * A problem named from a trace.
 *
 * @param causes what it is; several where this trace cannot tell them apart, the likeliest first
 * @param subject what kind of thing it is wrong with
 * @param name of the node, indicator, control, segment, or {@code host}
 * @param part index of that thing: of the node, slot or control in the pit's layout, of the segment, or -1 for the host
 * @param segment the segment's name
 * @param confidence how sure it is
 * @param count how often it was seen
 * @param firstNanos when it was first seen, ns since the start of the run
 * @param lastNanos when it was last seen
 * @param tiers what it was told from
 * @param sentence what is wrong and what shows it
 * @param next what to do
 */
public record Finding(
        List<Cause> causes,
        Subject subject,
        String name,
        int part,
        String segment,
        Confidence confidence,
        int count,
        long firstNanos,
        long lastNanos,
        Tiers tiers,
        String sentence,
        String next) {

    /** What something is wrong with. */
    public enum Subject {
        HOST,
        SEGMENT,
        NODE,
        INDICATOR,
        CONTROL
    }

    public Finding {
        causes = List.copyOf(causes);
        if (causes.isEmpty() || causes.stream().distinct().count() != causes.size()) {
            throw new IllegalArgumentException("a finding must name causes, each once: causes=" + causes);
        }
        if (count < 1 || lastNanos < firstNanos) {
            throw new IllegalArgumentException(
                    "a finding must have been seen: count=" + count + " first=" + firstNanos + " last=" + lastNanos);
        }
    }

    /** Whether what to do touches wiring, supplies or mechanisms: then {@link Cause#CAUTION} belongs beside it. */
    public boolean touchesHardware() {
        return causes.stream().anyMatch(Cause::touchesHardware);
    }
}
