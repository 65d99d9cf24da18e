@NullMarked
package dropline.harness.layout;

import org.jspecify.annotations.NullMarked;
