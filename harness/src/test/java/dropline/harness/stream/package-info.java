@NullMarked
package dropline.harness.stream;

import org.jspecify.annotations.NullMarked;
