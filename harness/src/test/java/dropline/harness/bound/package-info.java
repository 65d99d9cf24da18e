/** Holds the closed-form bounds to simulated runs, and the simulator to queues whose answer is published. */
@NullMarked
package dropline.harness.bound;

import org.jspecify.annotations.NullMarked;
