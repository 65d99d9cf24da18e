/**
 * Chance that can be repeated: draws that depend on nothing but seed, name, purpose and ordinal. Start from
 * {@link dropline.bus.chance.Distribution}.
 */
@NullMarked
package dropline.bus.chance;

import org.jspecify.annotations.NullMarked;
