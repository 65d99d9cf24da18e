/**
 * What a verdict rests on, and which guess to replace by a measurement first, found by running the pit with each guess
 * halved and doubled. Start from {@link dropline.harness.origin.Trials}. Reads no file and prints nothing.
 */
@NullMarked
package dropline.harness.origin;

import org.jspecify.annotations.NullMarked;
