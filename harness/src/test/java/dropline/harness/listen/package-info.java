/** What is kept of what was heard. */
@NullMarked
package dropline.harness.listen;

import org.jspecify.annotations.NullMarked;
