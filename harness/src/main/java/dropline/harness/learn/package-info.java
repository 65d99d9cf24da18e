/**
 * From bytes somebody else's boards say to a draft of their protocol. Start from
 * {@link dropline.harness.learn.Learning}. A guess from statistics: it says how sure it is, and never sends a byte.
 */
@NullMarked
package dropline.harness.learn;

import org.jspecify.annotations.NullMarked;
