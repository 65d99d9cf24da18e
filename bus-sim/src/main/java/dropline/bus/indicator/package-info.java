/**
 * What panels show, and when: lamps, refreshed displays, needles that move. Start from
 * {@link dropline.bus.indicator.Shows}. Knows nothing of frames.
 */
@NullMarked
package dropline.bus.indicator;

import org.jspecify.annotations.NullMarked;
