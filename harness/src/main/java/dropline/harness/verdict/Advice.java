package dropline.harness.verdict;

/**
 * What to do about a panel, a control or a segment, with the figures that say so.
 *
 * @param about the name of the panel, control or segment
 * @param sentence for people, to be read after {@code about} and a colon
 */
public record Advice(String about, String sentence) {}
