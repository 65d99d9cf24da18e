/** Who answers on a pair. */
@NullMarked
package dropline.harness.live;

import org.jspecify.annotations.NullMarked;
