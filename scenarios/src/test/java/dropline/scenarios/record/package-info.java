/** A live state stream caught and replayed, from end to end. */
@NullMarked
package dropline.scenarios.record;

import org.jspecify.annotations.NullMarked;
