/** Small pits that the tests of several rooms share. */
@NullMarked
package dropline.bus;

import org.jspecify.annotations.NullMarked;
