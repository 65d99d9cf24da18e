/** What a small pit survives, and how that is told. */
@NullMarked
package dropline.harness.survive;

import org.jspecify.annotations.NullMarked;
