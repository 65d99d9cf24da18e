/**
 * The pit file: from text with line numbers to a {@link dropline.bus.pit.Pit} or to everything that is wrong with it.
 * Start from {@link dropline.harness.pitfile.PitFile}; every key is declared once, in
 * {@link dropline.harness.pitfile.Schema}. Knows no formula of the bus.
 */
@NullMarked
package dropline.harness.pitfile;

import org.jspecify.annotations.NullMarked;
