/**
 * The rules of copper: what belongs on a pair and where. Start from {@link dropline.bus.copper.Pair}. Knows nothing of
 * time or of what is said on the pair.
 */
@NullMarked
package dropline.bus.copper;

import org.jspecify.annotations.NullMarked;
