/** Replays, whole, on small pits. */
@NullMarked
package dropline.harness.replay;

import org.jspecify.annotations.NullMarked;
