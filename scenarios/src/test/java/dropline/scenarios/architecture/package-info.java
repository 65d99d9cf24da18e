/** Rules about the sources themselves: directions, habits, sizes. Start from {@link ArchitectureTest}. */
@NullMarked
package dropline.scenarios.architecture;

import org.jspecify.annotations.NullMarked;
