package dropline.harness.size;

import org.jspecify.annotations.Nullable;

/**
 * The panel or control that came nearest its budget, or went farthest beyond it, and when.
 *
 * @param fared how it fared
 * @param deadNode the node that was dead then; null for none
 */
public record Tight(Fared fared, @Nullable String deadNode) {}
