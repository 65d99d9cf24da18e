/** Protocols made by chance, and what is learned of them. */
@NullMarked
package dropline.harness.learn;

import org.jspecify.annotations.NullMarked;
