/**
 * What the supplies of a pit come to, for people: start from {@link dropline.harness.power.PowerStudy}, which makes a
 * {@link dropline.harness.power.PowerResult} of a pit, and {@link dropline.harness.power.PowerText}, which tells it.
 * Volts and amperes are computed elsewhere, in {@code dropline.bus.supply}.
 */
@NullMarked
package dropline.harness.power;

import org.jspecify.annotations.NullMarked;
