/**
 * What a multimeter should read on a pit's pairs, and what a wrong reading means, in words: start from
 * {@link dropline.harness.meter.MeterResult} and {@link dropline.harness.meter.MeterText}. Solves nothing itself;
 * {@code dropline.bus.copper} does.
 */
@NullMarked
package dropline.harness.meter;

import org.jspecify.annotations.NullMarked;
