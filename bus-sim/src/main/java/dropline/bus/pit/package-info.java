/**
 * What a pit is: immutable descriptions, checked when made, equal by value. Start from {@link dropline.bus.pit.Pit}
 * and, for the numbers under which the trace speaks of its parts, {@link dropline.bus.pit.Layout}. Learns nothing
 * during a run.
 */
@NullMarked
package dropline.bus.pit;

import org.jspecify.annotations.NullMarked;
