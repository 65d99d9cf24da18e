/**
 * What a segment can be said to need before anything runs: closed forms over a description. Start from
 * {@link dropline.bus.plan.PollFloor} and {@link dropline.bus.plan.StateTime}. Knows nothing of chance beyond means.
 */
@NullMarked
package dropline.bus.plan;

import org.jspecify.annotations.NullMarked;
