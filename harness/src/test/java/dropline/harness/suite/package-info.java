@NullMarked
package dropline.harness.suite;

import org.jspecify.annotations.NullMarked;
