package dropline.harness.size;

import dropline.bus.pit.Indicator;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.harness.size.SizeResult.CoarseMotion;
import java.util.ArrayList;
import java.util.List;

/**
 * Finds needles fed by so few states that they visibly step: a small gauge stepper at 10 updates a second looks jittery
 * (common practice); at 60 degrees a second that is 6 degrees between two states.
 */
final class Coarse {
    private static final double FEW_A_SECOND = 10;

    private Coarse() {}

    /** @param statesPerSecond states that the host sends, above 0 */
    static List<CoarseMotion> of(Pit pit, Segment segment, double statesPerSecond) {
        List<CoarseMotion> coarse = new ArrayList<>();
        if (!(statesPerSecond > 0) || statesPerSecond > FEW_A_SECOND) {
            return coarse;
        }
        segment.nodes().stream().flatMap(node -> node.panels().stream()).forEach(panel -> {
            for (Indicator indicator : panel.indicators()) {
                if (indicator.kind() == Indicator.Kind.GAUGE_STEPPER) {
                    double speed = indicator.motion().ratePerSecond();
                    coarse.add(new CoarseMotion(
                            panel.name(),
                            indicator.name(),
                            speed,
                            statesPerSecond,
                            speed / statesPerSecond,
                            pit.signals().get(indicator.signals().get(0)).unit()));
                }
            }
        });
        return coarse;
    }
}
