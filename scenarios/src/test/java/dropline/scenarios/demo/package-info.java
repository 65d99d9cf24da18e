/**
 * The demo flight and the pit that shows it: the generator that made {@code scenarios/demo/flight.dlr}, and checks of
 * both. Start from {@link dropline.scenarios.demo.Flight}. Neither clock nor chance: the same flight on every machine.
 */
@NullMarked
package dropline.scenarios.demo;

import org.jspecify.annotations.NullMarked;
