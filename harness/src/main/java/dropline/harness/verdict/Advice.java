package dropline.harness.verdict;

/**
 * What to do about a panel, a control or a segment, with the figures that say so.
 *
 * @param about the name of the panel, control or segment
 * @param sentence for people, whole
 */
public record Advice(String about, String sentence) {}
