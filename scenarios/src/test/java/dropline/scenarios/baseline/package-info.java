/** Accepted runs of the demo, and what is told from chance. */
@NullMarked
package dropline.scenarios.baseline;

import org.jspecify.annotations.NullMarked;
