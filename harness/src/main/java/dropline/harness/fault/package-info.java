/**
 * Faults as a person writes them: from the text of {@code --fault} to a {@link dropline.bus.fault.Fault} or to
 * everything that is wrong with it, and back; and the catalogue that says what each kind is. Start from
 * {@link dropline.harness.fault.FaultOptions} and {@link dropline.harness.fault.Catalogue}. Simulates nothing.
 */
@NullMarked
package dropline.harness.fault;

import org.jspecify.annotations.NullMarked;
