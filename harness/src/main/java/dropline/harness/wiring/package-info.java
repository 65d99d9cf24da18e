/**
 * What one takes to the bench: a sheet that says what to wire where, and a card for the back of each board. Start from
 * {@link dropline.harness.wiring.WiringSheet} and {@link dropline.harness.wiring.Cards}. Words and lays out; what
 * belongs on a pair is for {@code dropline.bus.copper} to say.
 */
@NullMarked
package dropline.harness.wiring;

import org.jspecify.annotations.NullMarked;
