/** Programs in emulated boards: those that are right pass, those with a mistake fail in the right item. */
@NullMarked
package dropline.scenarios.firmware;

import org.jspecify.annotations.NullMarked;
