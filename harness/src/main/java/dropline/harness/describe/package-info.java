/**
 * Tells a person what was understood of their pit, or what their recording shows, before anything runs. Start from
 * {@link dropline.harness.describe.Describe}, or for a recording from {@link dropline.harness.describe.RecordingFold}.
 * Prints nothing itself and holds no formula of the bus.
 */
@NullMarked
package dropline.harness.describe;

import org.jspecify.annotations.NullMarked;
