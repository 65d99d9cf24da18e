/**
 * Who talked when on a segment, as a drawing. Start from {@link dropline.harness.timeline.Timeline}. Works from what
 * was captured and decides nothing about the bus.
 */
@NullMarked
package dropline.harness.timeline;

import org.jspecify.annotations.NullMarked;
