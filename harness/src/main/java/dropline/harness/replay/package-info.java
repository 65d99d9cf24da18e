/**
 * Plays states through a pit: reads a stretch, steps every segment through it side by side, and so on to the end. Start
 * from {@link dropline.harness.replay.Replay}. Knows no bus formula and prints nothing.
 */
@NullMarked
package dropline.harness.replay;

import org.jspecify.annotations.NullMarked;
