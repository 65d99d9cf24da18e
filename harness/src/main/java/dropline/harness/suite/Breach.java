package dropline.harness.suite;

/**
 * Something that a run was held to and that did not hold.
 *
 * @param rule what was asked
 * @param name of the panel, control or segment
 * @param value what came of it: ns, or for {@link Rule#LOST} a count
 * @param limit what was allowed: likewise
 */
public record Breach(Rule rule, String name, long value, long limit) {

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
        CYCLE
    }
}
