/** Boards on the bench: good ones pass, and each bad one fails in the right item. */
@NullMarked
package dropline.harness.bench;

import org.jspecify.annotations.NullMarked;
