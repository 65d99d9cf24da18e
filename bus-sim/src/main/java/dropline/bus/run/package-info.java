/**
 * One run of a pit. Start from {@link dropline.bus.run.SegmentRun}: built from a description and a seed, fed with
 * state, stepped with {@code advanceTo}, dropped. Owns no loop, no thread and no clock.
 */
@NullMarked
package dropline.bus.run;

import org.jspecify.annotations.NullMarked;
