package dropline.harness.suite;

/**
 * Something that a run was held to and that did not hold.
 *
 * @param rule what was asked
 * @param name of the panel, control, node or segment
 * @param value what came of it: ns, {@link #NEVER}, or for {@link Rule#LOST} a count
 * @param limit what was allowed: likewise
 * @param after what had gone wrong, where faults were tried in turn; empty otherwise
 */
public record Breach(Rule rule, String name, long value, long limit, String after) {
    /** In place of a time: not until the run, or the silence, was over. */
    public static final long NEVER = Long.MAX_VALUE;

    /** What can be asked of a run. */
    public enum Rule {
        /** A panel shows every change within its budget. */
        UPDATE,
        /** A panel shows every change: none was waiting at the end, or gone. */
        SHOWN,
        /** The host hears of a control within the budget. */
        CONTROL,
        /** No move of a control is lost. */
        LOST,
        /** No round of polls on a segment is slower. */
        CYCLE,
        /** The controls of a node are known so soon after the start and after it restarts. */
        KNOWN,
        /** A panel is right again so soon after the last fault is over. */
        RECOVERY,
        /** A panel shows what the host said last while it is silent. */
        SILENCE
    }
}
