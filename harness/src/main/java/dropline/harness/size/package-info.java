/**
 * How many more panels a segment takes: grows a pit, plays the same flight through each growth and judges every panel.
 * Start from {@link dropline.harness.size.Sizing}; {@link dropline.harness.size.Judging} judges any pits. Knows no bus
 * formula, reads no file and prints nothing.
 */
@NullMarked
package dropline.harness.size;

import org.jspecify.annotations.NullMarked;
