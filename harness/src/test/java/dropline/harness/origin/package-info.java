/** Which guess is named, and what is said of those tried. */
@NullMarked
package dropline.harness.origin;

import org.jspecify.annotations.NullMarked;
