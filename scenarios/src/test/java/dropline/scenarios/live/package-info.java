/** Drives pits over links, and compares what comes of it with a replay. */
@NullMarked
package dropline.scenarios.live;

import org.jspecify.annotations.NullMarked;
