package dropline.harness.size;

import dropline.harness.verdict.Stage;
import org.jspecify.annotations.Nullable;

/**
 * How one panel or control fared in a run.
 *
 * @param name of the panel, or of the control
 * @param control whether it is a control, judged on the host being told, and not a panel, judged on showing
 * @param node index into the pit's {@link dropline.bus.pit.Layout#nodes()} of the board that carries it
 * @param count updates, or moves
 * @param p99Nanos 99 of 100 took no longer, ns
 * @param worstNanos the longest, or the longest still waiting at the end, ns
 * @param limitNanos its budget, ns
 * @param lost changes never shown, or moves never told
 * @param whole whether its whole budget counts, since it needs nearly all of it even if alone
 * @param mostly where most of its slowest update went; null for a control, and where there was none
 */
public record Fared(
        String name,
        boolean control,
        int node,
        long count,
        long p99Nanos,
        long worstNanos,
        long limitNanos,
        long lost,
        boolean whole,
        @Nullable Stage mostly) {

    /** Whether it kept its budget with this much of it to spare, at worst and so at 99 of 100. */
    public boolean keeps(double margin) {
        return lost == 0 && worstNanos <= Demand.allowed(limitNanos, whole ? 0 : margin);
    }

    /** The same, judged against its whole budget. */
    Fared judgedWhole() {
        return new Fared(name, control, node, count, p99Nanos, worstNanos, limitNanos, lost, true, mostly);
    }

    /** Whether it is the same panel or control. */
    boolean isOf(Fared other) {
        return control == other.control && name.equals(other.name);
    }

    /** Its longest time as a share of its budget. */
    public double share() {
        return (double) worstNanos / limitNanos;
    }

    /** The time of 99 in 100 as a share of its budget. */
    public double p99Share() {
        return (double) p99Nanos / limitNanos;
    }
}
