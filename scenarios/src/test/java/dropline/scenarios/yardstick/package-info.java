/**
 * How fast the simulator is beside other ways to write the same model: {@code scenarios/reference/bus-with-state.yaml}
 * through the public simulator, against a general discrete-event library, and as a straight line of code without any
 * queue, which is about as fast as it can be. All three make the same draws, so that their figures must agree. Start
 * from {@link dropline.scenarios.yardstick.Yardstick}.
 */
@NullMarked
package dropline.scenarios.yardstick;

import org.jspecify.annotations.NullMarked;
