@NullMarked
package dropline.harness.record;

import org.jspecify.annotations.NullMarked;
