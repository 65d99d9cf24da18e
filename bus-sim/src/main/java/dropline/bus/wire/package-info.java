/**
 * What happens on the pair. Start from {@link dropline.bus.wire.Wire} and {@link dropline.bus.wire.Frame}. Knows who
 * drives and when, never why.
 */
@NullMarked
package dropline.bus.wire;

import org.jspecify.annotations.NullMarked;
