package dropline.harness.plan;

import dropline.bus.pit.Segment;
import org.jspecify.annotations.Nullable;

/**
 * What becomes of a segment.
 *
 * @param name in the pit file; for a further one, that of the segment it is like
 * @param planned as planned; null where it is no longer needed
 * @param furtherHub name of a hub of its own, like the other's; null where it has none or shares the other's
 */
public record SegmentChange(
        String name, @Nullable Segment planned, @Nullable String furtherHub) {

    /** Whether it is one that is not there yet. */
    public boolean isFurther() {
        return planned != null && !planned.name().equals(name);
    }

    /** The planned one's name; the present one's where it is no longer needed. */
    String plannedName() {
        return planned == null ? name : planned.name();
    }
}
