/** Links, all held to one contract. */
@NullMarked
package dropline.harness.link;

import org.jspecify.annotations.NullMarked;
