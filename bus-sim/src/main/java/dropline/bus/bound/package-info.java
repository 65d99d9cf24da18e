/**
 * What a segment never exceeds while nothing is broken but, perhaps, one node dead: closed forms over a description,
 * from the stated maxima. Start from {@link dropline.bus.bound.WorstCase}. Runs nothing and draws nothing.
 */
@NullMarked
package dropline.bus.bound;

import org.jspecify.annotations.NullMarked;
