/**
 * Plays one side of a real pair: the controller, or a segment's nodes. Start from {@link dropline.harness.live.Driving}
 * and {@link dropline.harness.live.StandIn}. Waits for the link's clock; what is said and when follows from
 * {@code dropline.bus.run} alone.
 */
@NullMarked
package dropline.harness.live;

import org.jspecify.annotations.NullMarked;
