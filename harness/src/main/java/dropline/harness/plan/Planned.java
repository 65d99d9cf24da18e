package dropline.harness.plan;

import dropline.bus.pit.Pit;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A plan and the pit it makes.
 *
 * @param pit as planned; null where no plan is offered
 * @param changes what the pit file has to say otherwise, segment by segment; none where no plan is offered
 */
public record Planned(PlanResult result, @Nullable Pit pit, List<SegmentChange> changes) {
    public Planned {
        changes = List.copyOf(changes);
    }
}
