/** Tests of what the supplies of a pit come to. */
@NullMarked
package dropline.harness.power;

import org.jspecify.annotations.NullMarked;
