package dropline.harness.plan;

import dropline.bus.rule.Ruling;
import dropline.harness.size.Fared;
import org.jspecify.annotations.Nullable;

/**
 * Why boards cannot share a segment with the settings tried first.
 *
 * @param boards how many they are
 * @param law one of copper that they break; null for none
 * @param missing what then misses its limit with every board alive; null where that is not it
 */
public record Refusal(
        int boards, @Nullable Ruling law, @Nullable Fared missing) {}
