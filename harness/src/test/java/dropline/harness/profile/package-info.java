@NullMarked
package dropline.harness.profile;

import org.jspecify.annotations.NullMarked;
