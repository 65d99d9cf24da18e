/** What a small pit sizes, and how that is told. */
@NullMarked
package dropline.harness.size;

import org.jspecify.annotations.NullMarked;
