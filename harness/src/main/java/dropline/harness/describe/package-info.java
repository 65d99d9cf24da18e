/**
 * Tells a person what was understood of their pit, and what follows from it before anything runs. Start from
 * {@link dropline.harness.describe.Describe}. Prints nothing itself and holds no formula of the bus.
 */
@NullMarked
package dropline.harness.describe;

import org.jspecify.annotations.NullMarked;
