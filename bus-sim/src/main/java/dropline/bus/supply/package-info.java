/**
 * What flows from the supplies to the boards: start from {@link dropline.bus.supply.Supplies} for the rules, from
 * {@link dropline.bus.supply.Feeds} for volts and amperes. Direct current, settled; knows no time and no trace.
 */
@NullMarked
package dropline.bus.supply;

import org.jspecify.annotations.NullMarked;
